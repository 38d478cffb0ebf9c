import type { FittedPart, LengthFormat, Like, Text } from '@dryfit/engine';
import { cabinetLabel, type Item } from '../batch.js';
import { SAWING_CAUTIONS } from '../cautions.js';
import type { PlannedJob } from '../plan/tables.js';
import { minutes } from '../plan/words.js';
import { byCaliper } from '../print/caliper.js';
import { degrees } from '../print/degrees.js';
import { printLength, printText } from '../print/length.js';
import { partNames } from '../print/order.js';
import { surfaceName } from '../print/surface.js';
import { alongOf, type CutFigures, nearName, otherCuts } from '../tables/cuts.js';
import { setUpWords } from './cover-page.js';
import { Flow } from './flow.js';
import { changes } from './footer.js';
import { errorsFound, type Page, type Paper } from './page.js';
import { setUpPages } from './set-up-page.js';

/** One piece of a job that is made again. */
export interface Remake {
  /** The piece alone, with its set-ups in their order. */
  readonly job: PlannedJob;
  readonly item: Item;
  readonly part: FittedPart;
  readonly like: Like;
}

/** What is printed for a piece that is made again: how it is cut and what to see to first, then the sheets of its set-ups. */
export const remakePages = (remake: Remake, paper: Paper, format: LengthFormat): readonly Page[] => [
  ...cutPages(remake, paper, format),
  ...remake.job.plan.setUps.flatMap((_, i) => setUpPages(remake.job, i, paper, format)),
];

function cutPages(remake: Remake, paper: Paper, format: LengthFormat): readonly Page[] {
  const { job, part } = remake;
  const flow = new Flow(printText(job.title, format), paper);
  if (job.errors > 0) flow.line(`${errorsFound(job.errors)}: DO NOT CUT OR MILL FROM THESE SHEETS`, 5, true);
  flow.line(`Lengths in ${format.units === 'in' ? 'inches' : 'millimetres'}.`, 3.4);
  flow.heading('See to this first');
  for (const warning of remakeWarnings(remake, format)) flow.ticked(warning, '');
  flow.heading('Cut one piece');
  for (const line of sizeLines(remake, format)) flow.line(line, 4.4);
  flow.line(SAWING_CAUTIONS.slice(0, -1).join(' '), 3.1);
  const cuts = otherCuts(part);
  if (cuts.length > 0) {
    flow.heading('Other cuts, beside the slots');
    for (const cut of cuts) flow.ticked(printText(cutText(part, cut), format), '');
  }
  const { plan } = job;
  if (plan.setUps.length === 0) flow.heading('Nothing is milled into it but that.');
  else flow.heading(`Set-ups, in this order: ${minutes(plan.change)} min to change, ${minutes(plan.mill)} min to mill`);
  plan.setUps.forEach((setUp, i) => {
    flow.ticked(setUpWords(setUp, i, format), changes(setUp.changed, setUp.setting, format));
  });
  return flow.pages();
}

function sizeLines({ part, item }: Remake, format: LengthFormat): readonly string[] {
  const { cutSize, bands, material } = part;
  const { spec } = item.result;
  const size = cutSize
    ? `${[cutSize.length, cutSize.width, cutSize.thickness].map((one) => printLength(one, format)).join(' x ')}, the grain along the first`
    : 'not fixed';
  const lines = [`${part.id}, ${material}: ${size}.`];
  const sheet = spec.shop.materials.get(material);
  if (sheet?.layers)
    lines.push(
      `Glued up of ${sheet.layers.join(', ')}${sheet.oversize ? `, each cut ${printLength(sheet.oversize, format)} larger` : ''}; cut to size afterwards.`,
    );
  if (bands.length === 0) return lines;
  const told = bands.map(
    ({ side, band, thickness }) => `${surfaceName(part, side)} with ${band}, ${printLength(thickness, format)}`,
  );
  return [...lines, `That is without its bands: ${told.join('; ')}. It is milled ${item.result.fit.milled}.`];
}

function cutText(part: FittedPart, cut: CutFigures): Text {
  const kind = cut.kind === 'bevel' ? `${degrees(cut.angle ?? 45)} bevel` : cut.kind;
  const words: Text[number][] = [`${kind} in the ${surfaceName(part, cut.surface)}`];
  const near = nearName(part, cut);
  if (cut.inFrom) words.push(', near wall ', cut.inFrom.at, ` from the ${near}`);
  else if (near !== '') words.push(`, ${near}`);
  if (cut.width) words.push(', ', cut.width, ' wide');
  if (cut.depth) words.push(', ', cut.depth, ' deep');
  const along = alongOf(part, cut);
  if (along.length > 0) words.push(', ', ...along);
  if (cut.run && !cut.run.through) words.push(': ', cut.run.from, ' to ', cut.run.to);
  return words;
}

/** What the text cannot know of a piece that is made again, and what it may be taken for. */
export function remakeWarnings({ part, item, like }: Remake, format: LengthFormat): readonly string[] {
  const { spec, fit } = item.result;
  const sheet = spec.shop.materials.get(part.material);
  const measured = fit.thickness === 'measured' && sheet?.measured;
  const warnings: string[] = [];
  if (part.cutSize)
    warnings.push(
      `Measure the sheet: ${part.material} is reckoned as ${byCaliper(part.cutSize.thickness, format.units)}${format.units === 'in' ? '"' : ''} thick (${measured ? 'as measured' : 'nominal'}). What another thickness does to its mates: dryfit tolerance FILE --measure ${part.material}=…`,
    );
  warnings.push(
    'Measure its mates: what was trimmed, or cut to fit at the bench, stands in no text. These figures are the ones that were planned.',
  );
  if (like.mirrored.length > 0)
    warnings.push(
      `${partNames(like.mirrored)} ${like.mirrored.length === 1 ? 'is its mirror image' : 'are its mirror images'}: see that it is really ${part.id} that is spoilt, and do not lay it as ${like.mirrored.length === 1 ? 'that one lies' : 'those lie'}.`,
    );
  if (like.same.length > 0)
    warnings.push(
      `${partNames(like.same)} of ${printText(cabinetLabel(fit), format)} ${like.same.length === 1 ? 'is' : 'are'} the same piece: one that is left over does as well.`,
    );
  return warnings;
}
