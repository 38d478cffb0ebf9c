import { opposite, type Side } from '@dryfit/engine';

/** A five-sided unit with any one of its four upright corners cut off. */
export interface Corner {
  readonly x: 'left' | 'right';
  readonly y: 'front' | 'rear';
  readonly wide: number | string;
  readonly deep: number | string;
  readonly legX: number | string;
  readonly legY: number | string;
  /** Slots of the mitres from their toes. */
  readonly at?: number | undefined;
  /** From the heel instead. */
  readonly inner?: boolean | undefined;
  readonly pose?: 'up' | 'down' | undefined;
}

/** The unit as a shop writes it: two whole sides, two stubs, and a face on the cant between them. */
export function written(corner: Corner): string {
  const { x, y, wide, deep, legX, legY, at = 12, inner, pose = 'up' } = corner;
  const [ox, oy]: [Side, Side] = [opposite(x), opposite(y)];
  const pair = x === 'right' ? `stub.${y} and end.${x}` : `end.${x} and stub.${y}`;
  return `units mm
material board { thickness 18  measured 17.7 ± 0.2 }
machine joiner { cutter 100  kerf 4  base to centre 9.5 }
connector plate : biscuit { along 53  across 19  thickness 4  plunge 9.9  by joiner }
pattern two { first 60  last 60 }
pose { edge slots reference down  face slots reference ${pose} }
cabinet Unit {
  part base, top  : level of board
  part side, end  : upright of board
  part back, stub : facing of board
  part face       : facing of board on base.cant
  width ${wide} of base, top
  depth ${deep} of base, top
  height 500 over base and top
  top.left flush with base
  top.rear flush with base
  cant base, top at ${y} ${x} { width ${legX}  depth ${legY} }
  connect plate by two
  butt side between base and top { flush ${ox}, rear, front }
  butt back between base and top { flush ${x}, ${oy} }
  butt stub between base and top { flush ${y} }
  butt end between base and top { flush ${x} }
  butt face between base and top
  mitre face between ${pair} { at ${at} from reference${inner ? '  reference inner' : ''} }
  butt back to side.${x} { connect none "glued" }
  butt stub to side.${x} { connect none "glued" }
  butt end to back.${y} { connect none "glued" }
}
`;
}
