/**
 * Two shelves between two sides, as deep as told.
 *
 * @param by the lines of each of the two, as they are written: `by lines 80, 160`
 * @param more what else stands in the file, before the cabinet
 */
export const rack = (deep: number, [one, two]: readonly [string, string], more = ''): string => `units mm
import "shop.joinery"
${more}
cabinet Rack {
  part lh, rh : upright of birch18
  part one, two : level of birch18
  width 600 over lh and rh
  height 720 of lh, rh
  depth ${deep} of lh, rh
  rh.bottom flush with lh
  rh.rear flush with lh
  butt one between lh and rh { bottom 200 above lh.bottom  flush rear, front  connect biscuit20 ${one} }
  butt two between lh and rh { bottom 200 below lh.top  flush rear, front  connect biscuit20 ${two} }
}
`;
