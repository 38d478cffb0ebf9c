/**
 * Text from a spec made safe to print: control characters, and the marks that reorder what is read, appear as
 * visible signs, so that no file can move the cursor, colour the terminal or show words in another order.
 */
export function visible(text: string): string {
  return text.replace(UNSAFE, sign);
}

// C0 and C1 controls but tab, line separators, the marks of the bidirectional algorithm (Unicode UAX #9), the
// byte order mark, and halves of surrogate pairs.
const UNSAFE =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what it looks for
  /[\u0000-\u0008\u000A-\u001F\u007F-\u009F\u061C\u200E\u200F\u2028-\u202E\u2066-\u2069\uFEFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

function sign(character: string): string {
  const code = character.charCodeAt(0);
  // U+2400 onward are the pictures of the control characters from 0 to 31; U+2421 is that of delete.
  if (code < 0x20) return String.fromCharCode(0x2400 + code);
  if (code === 0x7f) return '\u2421';
  return `<U+${code.toString(16).toUpperCase().padStart(4, '0')}>`;
}
