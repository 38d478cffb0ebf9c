import { AXES, dimensionOf, type Finding, type FitResult, type FittedPart, type LengthFormat } from '@dryfit/engine';
import { cabinetLabel } from '../../batch.js';
import { printLength, printText } from '../../print/length.js';
import { surfaceName } from '../../print/surface.js';
import type { Scene, SceneBox, SceneFinding, SceneJoint, ScenePart, Triple } from '../scene.js';
import { alongCant, sceneTurn } from './along.js';
import { type SlotOfJoint, sceneCuts } from './cuts.js';
import { common, sceneBox } from './figures.js';
import { marksOf } from './marks.js';
import { type Places, placesOf } from './places.js';

/** What there is to draw of a cabinet: every part with its cuts, every joint, and what was found about them. */
export function sceneOf(result: FitResult, findings: readonly Finding[], format: LengthFormat): Scene {
  const { fit } = result;
  const places = placesOf(result);
  const slots = new Map<string, SlotOfJoint>();
  for (const joint of fit.joints)
    for (const half of joint.halves) for (const slot of half.slots) slots.set(slot.id, { joint, half, slot });
  const joints = new Map(fit.joints.map((joint) => [joint.id, joint]));
  const parts = fit.parts.map(
    (part): ScenePart => ({
      ...partOf(part, places, format),
      cuts: sceneCuts(part, slots, joints, places, format),
      ...alongOf(part, slots, places, format),
    }),
  );
  // A turned part touches others in planes that no box along the axes tells.
  const boxes = new Map(parts.map(({ part, box, turn }) => [part, turn ? undefined : box]));
  const drawn = fit.joints.map(
    (joint): SceneJoint => ({
      shape: `joint ${joint.id}`,
      label: `${joint.verb} ${joint.entering} to ${joint.host}`,
      places: places.slot(joint.statement, joint.source, [joint.entering, joint.host]),
      joint: joint.id,
      entering: joint.entering,
      host: joint.host,
      enteringSide: joint.enteringSide,
      hostSide: joint.hostSide,
      ...contactOf(boxes.get(joint.entering), boxes.get(joint.host)),
    }),
  );
  const known = new Set([
    ...parts.flatMap((part) => [part.shape, ...[...part.cuts, ...(part.along ?? [])].map((cut) => cut.shape)]),
    ...drawn.map(({ shape }) => shape),
  ]);
  const { outside } = fit;
  return {
    cabinet: fit.name,
    title: printText(cabinetLabel(fit), format),
    units: format.units,
    ...(outside && {
      outside: AXES.map((axis) => printLength(outside[axis], format, 'table')) as unknown as Triple<string>,
    }),
    parts,
    joints: drawn,
    findings: findings.map((finding) => found(finding, known, format)),
    marks: marksOf(findings, format),
  };
}

function alongOf(
  part: FittedPart,
  slots: ReadonlyMap<string, SlotOfJoint>,
  places: Places,
  format: LengthFormat,
): Pick<ScenePart, 'along'> {
  const along = part.cuts.flatMap((cut) => {
    const found = 'slot' in cut ? slots.get(cut.slot) : undefined;
    return 'slot' in cut && cut.turn && found ? [alongCant(part, cut, cut.turn, found, places, format)] : [];
  });
  return along.length > 0 ? { along } : {};
}

function contactOf(a: SceneBox | undefined, b: SceneBox | undefined): Pick<SceneJoint, 'contact'> {
  const contact = common(a, b);
  return contact ? { contact } : {};
}

function partOf(part: FittedPart, places: Places, format: LengthFormat): Omit<ScenePart, 'cuts'> {
  const sizes = AXES.map((axis) => {
    const extent = part.extent[axis];
    return extent && printLength(extent, format, 'table');
  }) as unknown as Triple<string | undefined>;
  const said = AXES.map((axis, i) => `${dimensionOf(axis)} ${sizes[i] ?? 'not fixed'}`).join(', ');
  const banded = part.bands.map(({ side }) => surfaceName(part, side));
  return {
    shape: `part ${part.id}`,
    label: `${part.id}, ${part.attitude} of ${part.material}: ${said}${banded.length > 0 ? `; ${banded.join(', ')} banded` : ''}`,
    places: places.part(part.id),
    part: part.id,
    attitude: part.attitude,
    material: part.material,
    grain: part.grain,
    same: part.same,
    ...(part.box && { box: sceneBox(part.box) }),
    ...(part.turn && { turn: sceneTurn(part.turn) }),
    sizes,
    bands: part.bands.map(({ side, band }) => ({ side, band })),
  };
}

function found(finding: Finding, known: ReadonlySet<string>, format: LengthFormat): SceneFinding {
  const { parts = [], slots = [], joint } = finding.about;
  const shapes = [
    ...parts.map((part) => `part ${part}`),
    ...slots.map((slot) => `slot ${slot}`),
    ...(joint === undefined ? [] : [`joint ${joint}`]),
  ];
  return {
    code: finding.code,
    severity: finding.severity,
    message: printText(finding.message, format),
    cure: printText(finding.cure, format),
    place: finding.source,
    shapes: shapes.filter((shape) => known.has(shape)),
  };
}
