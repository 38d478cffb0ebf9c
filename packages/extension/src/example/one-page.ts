/** A cabinet and the shop it imports as one text, for where no file can be written. */
export function onePage(cabinet: string, shop: string): string {
  const own = cabinet.replace(/^import "[^"]*"\r?\n/m, '');
  return `${own.trimEnd()}\n\n${shop.replace(/^units .*\r?\n/m, '').trim()}\n`;
}
