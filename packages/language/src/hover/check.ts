import { summaries } from './generated/summaries.js';
import { code, plain } from './markdown.js';

/** What a check finds, for its name in `allow`. */
export function checkHover(name: string): string | undefined {
  const summary = Object.hasOwn(summaries, name) ? summaries[name] : undefined;
  return summary === undefined ? undefined : `${code(name)}: ${plain(summary)}`;
}
