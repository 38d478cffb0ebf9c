/** A small shop for tests that need one: no jig, an 18 mm board, a disc joiner, biscuits of 56 × 23. */
export interface ShopWishes {
  readonly thickness?: string;
  readonly measured?: string;
  readonly cutter?: string;
  readonly kerf?: string;
  readonly base?: string;
  readonly along?: string;
  readonly across?: string;
  readonly plunge?: string;
  /** More settings of the connector. */
  readonly connector?: string;
  readonly pattern?: string;
  readonly edge?: string;
  readonly wall?: string;
  readonly skin?: string;
  readonly more?: string;
}

export function shopText(wishes: ShopWishes = {}): string {
  const {
    thickness = '18mm',
    measured,
    cutter = '100mm',
    kerf = '4mm',
    base = '9mm',
    along = '56mm',
    across = '23mm',
    plunge = '12.3mm',
    connector = '',
    pattern = 'lines 70mm, 180mm, 270mm',
    edge = '5mm',
    wall = '3mm',
    skin = '3mm',
    more = '',
  } = wishes;
  return `
material board { thickness ${thickness}${measured ? `  measured ${measured}` : ''} }
machine joiner { cutter ${cutter}  kerf ${kerf}  base to centre ${base} }
connector plate : biscuit { along ${along}  across ${across}  thickness 4mm  plunge ${plunge}  by joiner ${connector} }
pattern row { ${pattern} }
limits { slot to edge along the run ${edge}  wall beside slot ${wall}  skin under slot ${skin} }
${more}
`;
}

/** Two sides with one level part between them, flush at front and rear. */
export function oneShelf(wishes: ShopWishes & { readonly deep?: string; readonly facts?: string } = {}): string {
  const { deep = '560mm', facts = 'bottom 300mm above lh.bottom  flush front, rear' } = wishes;
  return `units mm
${shopText(wishes)}
cabinet Case {
  part lh, rh : upright of board
  part shelf : level of board
  width 600mm over lh and rh
  height 700mm of lh, rh
  depth ${deep} of lh, rh
  lh.bottom flush with rh
  lh.rear flush with rh
  connect plate by row
  butt shelf between lh and rh { ${facts} }
}
`;
}
