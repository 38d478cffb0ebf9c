// Written by `npm run generate` from the files in the folder `checks`.
import type { Check } from '../checks/check.js';
import { backPinched } from '../checks/back-pinched.js';
import { bandedDatum } from '../checks/banded-datum.js';
import { cannotBeAssembled } from '../checks/cannot-be-assembled.js';
import { cantTooLarge } from '../checks/cant-too-large.js';
import { connectorBinds } from '../checks/connector-binds.js';
import { connectorTooLong } from '../checks/connector-too-long.js';
import { datumInside } from '../checks/datum-inside.js';
import { datumOffTheRun } from '../checks/datum-off-the-run.js';
import { doesNotClose } from '../checks/does-not-close.js';
import { edgesCross } from '../checks/edges-cross.js';
import { edgesNotFlush } from '../checks/edges-not-flush.js';
import { endsDiffer } from '../checks/ends-differ.js';
import { facesMeet } from '../checks/faces-meet.js';
import { fenceOutOfReach } from '../checks/fence-out-of-reach.js';
import { flushNotReference } from '../checks/flush-not-reference.js';
import { gapAtJoint } from '../checks/gap-at-joint.js';
import { glueSetsFirst } from '../checks/glue-sets-first.js';
import { grainAcross } from '../checks/grain-across.js';
import { grooveBottomsOut } from '../checks/groove-bottoms-out.js';
import { grooveShows } from '../checks/groove-shows.js';
import { handed } from '../checks/handed.js';
import { jointBottomsOut } from '../checks/joint-bottoms-out.js';
import { jointCanRotate } from '../checks/joint-can-rotate.js';
import { linesMistaken } from '../checks/lines-mistaken.js';
import { loadNotReckoned } from '../checks/load-not-reckoned.js';
import { lookAlike } from '../checks/look-alike.js';
import { mitreNoRoom } from '../checks/mitre-no-room.js';
import { mitreUnequal } from '../checks/mitre-unequal.js';
import { moistureOutOfRange } from '../checks/moisture-out-of-range.js';
import { namedBackwards } from '../checks/named-backwards.js';
import { neverMeasured } from '../checks/never-measured.js';
import { noConnectorLands } from '../checks/no-connector-lands.js';
import { noConnectors } from '../checks/no-connectors.js';
import { noContact } from '../checks/no-contact.js';
import { noFence } from '../checks/no-fence.js';
import { notchTooLarge } from '../checks/notch-too-large.js';
import { openingsNegative } from '../checks/openings-negative.js';
import { pairTooShort } from '../checks/pair-too-short.js';
import { partNotFixed } from '../checks/part-not-fixed.js';
import { partUnattached } from '../checks/part-unattached.js';
import { partsOverlap } from '../checks/parts-overlap.js';
import { referenceMissing } from '../checks/reference-missing.js';
import { referenceNotAFace } from '../checks/reference-not-a-face.js';
import { referencesDiffer } from '../checks/references-differ.js';
import { sheetTooShort } from '../checks/sheet-too-short.js';
import { shelfNeedsSpacer } from '../checks/shelf-needs-spacer.js';
import { shelfProud } from '../checks/shelf-proud.js';
import { shelfSags } from '../checks/shelf-sags.js';
import { sizeNotPositive } from '../checks/size-not-positive.js';
import { slotBreaksThrough } from '../checks/slot-breaks-through.js';
import { slotNearEdge } from '../checks/slot-near-edge.js';
import { slotsCollide } from '../checks/slots-collide.js';
import { spacerAbsurd } from '../checks/spacer-absurd.js';
import { spacerAlias } from '../checks/spacer-alias.js';
import { spacerNotInStock } from '../checks/spacer-not-in-stock.js';
import { stepAtJoint } from '../checks/step-at-joint.js';
import { stopNotOnStep } from '../checks/stop-not-on-step.js';
import { stopOutOfRange } from '../checks/stop-out-of-range.js';
import { thinWall } from '../checks/thin-wall.js';
import { tooBigForJig } from '../checks/too-big-for-jig.js';
import { turnedOtherwise } from '../checks/turned-otherwise.js';
import { woodMoves } from '../checks/wood-moves.js';
import { wrongFaceHides } from '../checks/wrong-face-hides.js';

/** Every check, in the order of their names. */
export const checks: readonly Check[] = [
  backPinched,
  bandedDatum,
  cannotBeAssembled,
  cantTooLarge,
  connectorBinds,
  connectorTooLong,
  datumInside,
  datumOffTheRun,
  doesNotClose,
  edgesCross,
  edgesNotFlush,
  endsDiffer,
  facesMeet,
  fenceOutOfReach,
  flushNotReference,
  gapAtJoint,
  glueSetsFirst,
  grainAcross,
  grooveBottomsOut,
  grooveShows,
  handed,
  jointBottomsOut,
  jointCanRotate,
  linesMistaken,
  loadNotReckoned,
  lookAlike,
  mitreNoRoom,
  mitreUnequal,
  moistureOutOfRange,
  namedBackwards,
  neverMeasured,
  noConnectorLands,
  noConnectors,
  noContact,
  noFence,
  notchTooLarge,
  openingsNegative,
  pairTooShort,
  partNotFixed,
  partUnattached,
  partsOverlap,
  referenceMissing,
  referenceNotAFace,
  referencesDiffer,
  sheetTooShort,
  shelfNeedsSpacer,
  shelfProud,
  shelfSags,
  sizeNotPositive,
  slotBreaksThrough,
  slotNearEdge,
  slotsCollide,
  spacerAbsurd,
  spacerAlias,
  spacerNotInStock,
  stepAtJoint,
  stopNotOnStep,
  stopOutOfRange,
  thinWall,
  tooBigForJig,
  turnedOtherwise,
  woodMoves,
  wrongFaceHides,
];
