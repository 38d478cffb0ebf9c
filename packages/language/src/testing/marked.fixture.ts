/** A text without its cursor `|`, and where that stood. */
export function marked(text: string): { readonly text: string; readonly offset: number } {
  const offset = text.indexOf('|');
  if (offset < 0) throw new Error('the text has no cursor');
  return { text: text.replace('|', ''), offset };
}
