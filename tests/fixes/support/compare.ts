import type { Finding } from '@dryfit/engine';
import type { Change } from '@dryfit/language';

/**
 * Findings after a change that were not there before it. Two are the same if they are of one check and stand in one
 * place, the places before being carried along with the text; not, as where a cure is offered, if there are as many.
 */
export function newFindings(
  before: readonly Finding[],
  after: readonly Finding[],
  { edits }: Change,
  mayFollow: Readonly<Record<string, string>> = {},
): readonly Finding[] {
  const left = before.map((finding) => ({ finding, places: carried(finding.source, edits) }));
  return after.filter((finding) => {
    const at = left.findIndex((old) => old.finding.code === finding.code && old.places.includes(finding.source.start));
    if (at >= 0) left.splice(at, 1);
    return at < 0 && mayFollow[finding.code] === undefined;
  });
}

/** Where a place may be after edits: before or behind what is put in at the place itself. */
function carried({ uri, start }: Finding['source'], edits: Change['edits']): readonly number[] {
  let [least, most] = [start, start];
  for (const edit of edits.filter((one) => one.uri === uri)) {
    const by = edit.text.length - (edit.end - edit.start);
    if (edit.end <= start && edit.start < start) {
      least += by;
      most += by;
    } else if (edit.start === start && edit.end === start) most += by;
    else if (edit.start < start && start < edit.end) [least, most] = [least - (start - edit.start), most + by];
  }
  return [least, most];
}
