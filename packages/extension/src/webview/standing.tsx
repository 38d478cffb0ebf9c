import type { Standing as State } from '../panel/messages.js';

/** Why what is shown may not be what the text now says, in a line over it; nothing while it is. */
export function Standing({ standing, what }: { readonly standing: State; readonly what: string }) {
  const words = standingWords(standing, what);
  return words === undefined ? null : (
    <p class="standing" role="status">
      {words}
    </p>
  );
}

/** `what` is shown: "drawn", "listed". */
export function standingWords(standing: State, what: string): string | undefined {
  const { name, file, broken, stale, workedOut } = standing;
  if (file === 'deleted') return `${name} has been deleted; what is ${what} here is the last of it.`;
  if (file === 'unreadable') return `${name} cannot be read, so nothing new can be ${what}.`;
  if (!workedOut) return 'Cabinets are not worked out: the setting dryfit.joinery is off.';
  if (stale) return `The text is broken; ${what} from the last text that was whole.`;
  if (broken) return `The text is broken; ${what} is what could be read of it.`;
  return undefined;
}
