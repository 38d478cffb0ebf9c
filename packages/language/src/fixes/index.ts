import { addSpacer } from './add-spacer.js';
import { allow } from './allow.js';
import { centred } from './centred.js';
import { changeNumber } from './change-number.js';
import { connectBy } from './connect-by.js';
import { connectNone } from './connect-none.js';
import { cutFigures } from './cut-figures.js';
import { cutSpacer } from './cut-spacer.js';
import { endShort } from './end-short.js';
import { evenLines } from './even-lines.js';
import { fewerParts } from './fewer-parts.js';
import type { Fix } from './fix.js';
import { fixPart } from './fix-part.js';
import { flush } from './flush.js';
import { grain } from './grain.js';
import { join } from './join.js';
import { joinAsOthers } from './join-as-others.js';
import { leaveOut } from './leave-out.js';
import { loosen } from './loosen.js';
import { measured } from './measured.js';
import { milled } from './milled.js';
import { mitreSide } from './mitre-side.js';
import { moveAcross } from './move-across.js';
import { moveLine } from './move-line.js';
import { movePart } from './move-part.js';
import { otherConnector } from './other-connector.js';
import { otherDatum } from './other-datum.js';
import { otherMaterial } from './other-material.js';
import { plunge } from './plunge.js';
import { reference } from './reference.js';
import { resize } from './resize.js';
import { sayHow } from './say-how.js';
import { sayProud } from './say-proud.js';
import { skipWithin } from './skip-within.js';
import { swapNames } from './swap-names.js';
import { takeOut } from './take-out.js';
import { textFixes } from './text/index.js';
import { touching } from './touching.js';
import { twoLines } from './two-lines.js';

/** Every fix; of one finding, cures are offered in this order. Fixes that change the joinery come before `allow`. */
export const fixes: readonly Fix[] = [
  cutSpacer,
  otherDatum,
  changeNumber,
  addSpacer,
  moveLine,
  skipWithin,
  leaveOut,
  twoLines,
  reference,
  mitreSide,
  centred,
  evenLines,
  moveAcross,
  otherConnector,
  plunge,
  cutFigures,
  endShort,
  joinAsOthers,
  fixPart,
  swapNames,
  takeOut,
  flush,
  movePart,
  resize,
  fewerParts,
  touching,
  sayProud,
  join,
  otherMaterial,
  grain,
  milled,
  measured,
  connectBy,
  connectNone,
  loosen,
  sayHow,
  allow,
  ...textFixes,
];
