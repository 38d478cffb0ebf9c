const IMPORT = 'import "shop.joinery"';

/** A text that imports the examples' shop, with entries of its own after it. */
export function withShop(text: string, more: string): string {
  if (!text.includes(IMPORT)) throw new Error(`the text does not import the shop:\n${text}`);
  return text.replace(IMPORT, `${IMPORT}\n${more}`);
}

/** A jig that holds pieces by a beam over its bed. */
export const BEAMED =
  'jig beamed { bed 900  fences left, right  stop 0 to 760 step 0.5  spacers 6, 10, 12, 19, 25 within 0.2  hold beam }';
