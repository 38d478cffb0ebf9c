import type { Standing as State } from '../panel/messages.js';

/** Why what is shown may not be what the text now says, in a line over it; nothing while it is. */
export function Standing({ standing, what }: { readonly standing: State; readonly what: Shown }) {
  const words = standingWords(standing, what);
  return words === undefined ? null : (
    <p class="standing" role="status">
      {words}
    </p>
  );
}

type Shown = 'drawn' | 'listed' | 'planned';

/** True if what is shown may not be what the file now comes to. */
export const isOld = ({ file, stale, served }: State): boolean => stale || !served || !['there', 'open'].includes(file);

/** `what` is done with it. */
function standingWords(standing: State, what: Shown): string | undefined {
  const { name, broken, stale, workedOut, served } = standing;
  const left = leftWords(standing, what);
  if (left !== undefined) return left;
  if (!served) {
    return standing.last
      ? `The language server is not running; what is ${what} here is the last of ${name}.`
      : 'The language server is not running.';
  }
  if (!workedOut) return 'Cabinets are not worked out: the setting dryfit.joinery is off.';
  if (stale) return `The text is broken; ${what} from the last text that was whole.`;
  if (broken) return `The text is broken; ${what} is what could be read of it.`;
  return undefined;
}

/** What has become of the file. */
function leftWords({ name, file, last }: State, what: Shown): string | undefined {
  const rest = last ? `what is ${what} here is the last of it` : `there is nothing to be ${what}`;
  switch (file) {
    case 'deleted':
      return `${name} has been deleted or moved away; ${rest}.`;
    case 'closed':
      return `${name} is closed, or saved under a name of its own; ${rest}.`;
    case 'unreadable':
      return `${name} cannot be read; ${rest}.`;
    case 'open':
      return `${name} has been deleted; ${what} from the text that is still open. Save it to keep it.`;
    default:
      return undefined;
  }
}
