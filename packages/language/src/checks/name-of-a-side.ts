import { SIDES, type Side, say } from '@dryfit/engine';
import { reporter } from '../findings/report.js';
import { isCabinet } from '../generated/ast.js';
import { namesOfCabinet } from '../scope/names.js';
import type { FileCheck } from './file-check.js';

/** A part is named after a side, which reads badly where the two meet. */
export const nameOfASide = reporter('name-of-a-side', 'info');

/** `top` and `bottom` are what those panels are called in the trade, but `bottom.bottom` is hard to read aloud. */
export const namesOfSides: FileCheck = ({ file, places }) =>
  file.entries.filter(isCabinet).flatMap((cabinet) =>
    [...namesOfCabinet(cabinet).parts.values()]
      .filter((part) => SIDES.includes(part.name as Side) && part.name !== 'top')
      .map((part) =>
        nameOfASide({
          source: places.property(part, 'name'),
          message: say`a part called ${part.name} makes planes such as ${part.name}.${part.name} hard to read`,
          cure: say`Call it something else if you can, such as ${INSTEAD[part.name as Side]}.`,
          parts: [part.name],
          data: { instead: INSTEAD[part.name as Side] },
        }),
      ),
  );

const INSTEAD: Readonly<Record<Side, string>> = {
  left: 'lh',
  right: 'rh',
  front: 'face',
  rear: 'back',
  bottom: 'base',
  top: 'lid',
};
