/** An example of a check's page, run as a test. */
export interface Example {
  /** `fails` has to show the check, `passes` must not, `limit` shows it on one side of a number only. */
  readonly kind: 'fails' | 'passes' | 'limit';
  /** The file's text; a limit's holds `@` where the number goes. */
  readonly text: string;
  /** Line of the page on which the example begins, from 1. */
  readonly line: number;
  /** A limit's numbers: the one that passes and the one that fails. */
  readonly limit?: { readonly passes: string; readonly fails: string } | undefined;
}

const OPENING = /^```joinery (?:(fails|passes)|limit passes=(\S+) fails=(\S+))$/;

/**
 * The examples of a page, in order.
 * @throws Error if a block in the language does not say what it is to show, or is never closed.
 */
export function examplesOf(page: string): readonly Example[] {
  const examples: Example[] = [];
  const lines = page.split(/\r?\n/);
  for (let i = 0; i < lines.length; i++) {
    const head = (lines[i] ?? '').trimEnd();
    if (!head.startsWith('```joinery')) continue;
    const match = OPENING.exec(head);
    if (!match) throw new Error(`line ${i + 1}: "${head}" is neither fails, passes nor limit passes=A fails=B`);
    const end = lines.indexOf('```', i);
    if (end < 0) throw new Error(`line ${i + 1}: the example is not closed`);
    const text = `${lines.slice(i + 1, end).join('\n')}\n`;
    const [, kind, passes, fails] = match;
    if (kind === 'fails' || kind === 'passes') examples.push({ kind, text, line: i + 1 });
    else if (passes && fails) examples.push({ kind: 'limit', text, line: i + 1, limit: { passes, fails } });
    i = end;
  }
  return examples;
}

/** A limit's text with a number in its place. */
export const at = (example: Example, number: string): string => example.text.replaceAll('@', number);
