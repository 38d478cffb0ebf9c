/**
 * A shelf on either side of a divider that stands on the base, so that its two ends need different stops.
 *
 * @param heights of the two shelves over the base's bottom
 * @param more what else stands in the file, before the cabinet
 */
export const divided = ([left, right]: readonly [number, number], more = ''): string => `units mm
import "shop.joinery"
${more}
cabinet Divided {
  part lh, rh, divider : upright of birch18
  part top, base : level of birch18
  part lshelf, rshelf : level of birch18
  width 900 over lh and rh
  height 720 of lh
  depth 400 of lh
  connect biscuit20 by lines 80, 200, 320
  butt top between lh and rh { flush top, rear, front }
  butt base between lh and rh { flush bottom, rear, front }
  butt divider between base and top { left 450 right of lh.right  flush rear, front  reference left }
  butt lshelf between lh and divider { bottom ${left} above base.bottom  flush rear, front  allow ends-differ "an offcut lies under the divider" }
  butt rshelf between divider and rh { bottom ${right} above base.bottom  flush rear, front  allow ends-differ "an offcut lies under the divider" }
}
`;
