import { axisOf, type FittedPart, type Side, type Turn as Slant } from '@dryfit/engine';
import { elevation, type Scene, type ScenePart, toSvg } from '@dryfit/output';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exampleText } from '../support/examples.js';
import { fitText } from '../support/read.js';
import { ALL_TURNS, followedBy, type Turn, turned } from '../support/turning.js';
import { OUT, type Vector } from '../support/vectors.js';
import { all, hasClass, type Patch, patchOf, type Read, read } from './paper.js';
import { type Drawn, drawn, drawnFrom, random, sound } from './scenes.js';

/*
 * The oracle turns the part as a body, never mirroring it, until the face drawn looks at the reader; and to lay an
 * edge flat it turns it once more, about that edge. The reader looks along +y, x runs to the right, z up.
 */
const TOWARD_READER: Vector = [0, -1, 0];

const same = (a: Vector, b: Vector): boolean => a.every((n, i) => Math.abs(n - (b[i] as number)) < 1e-9);

function turnTo(...wanted: readonly (readonly [from: Vector, to: Vector])[]): Turn {
  const found = ALL_TURNS.filter((turn) => wanted.every(([from, to]) => same(turned(turn, from), to)));
  expect(found).toHaveLength(1);
  return found[0] as Turn;
}

/** Turns a part so that a face of it looks at the reader: standing as it stands, or a level part with its rear up. */
const facing = (face: Side): Turn =>
  turnTo([OUT[face], TOWARD_READER], [OUT[axisOf(face) === 'z' ? 'rear' : 'top'], [0, 0, 1]]);

/** Corners of the part's box after a turn, in x and z. */
function extent(part: FittedPart, turn: Turn): Patch {
  const { lo, hi } = part.box as NonNullable<FittedPart['box']>;
  const [a, b] = [lo, hi].map((p) => turned(turn, [p.x.toNumber(), p.y.toNumber(), p.z.toNumber()])) as [
    Vector,
    Vector,
  ];
  return {
    left: Math.min(a[0], b[0]),
    right: Math.max(a[0], b[0]),
    top: Math.max(a[2], b[2]),
    bottom: Math.min(a[2], b[2]),
  };
}

const share = (at: number, from: number, to: number): number => (at - from) / (to - from);

/** Where in a rectangle a point lies, as shares of its width and height from its upper left corner. */
const within = (p: readonly [number, number], { left, right, top, bottom }: Patch): readonly [number, number] => [
  share(p[0], left, right),
  share(p[1], top, bottom),
];

const middle = ({ left, right, top, bottom }: Patch): readonly [number, number] => [
  (left + right) / 2,
  (top + bottom) / 2,
];

const groupOf = (root: Read, shape: string): Read => {
  const found = all(root).filter(({ attributes }) => attributes['data-shape'] === shape);
  expect(found, shape).toHaveLength(1);
  return found[0] as Read;
};

const viewOf = (element: Read): Read => {
  const { parent } = element;
  if (element.attributes['data-face'] !== undefined) return element;
  if (!parent) throw new Error('not in a view');
  return viewOf(parent);
};

const only = (elements: readonly Read[]): Read => {
  expect(elements).toHaveLength(1);
  return elements[0] as Read;
};

function check({ result }: Drawn, scene: Scene): number {
  let checked = 0;
  for (const part of result.fit.parts) {
    if (!part.box) continue;
    const root = read(toSvg(elevation(scene, part.id)));
    for (const cut of part.cuts) {
      if (!('slot' in cut)) continue;
      if (cut.turn) {
        along(root, part, cut, cut.turn);
        checked += 1;
        continue;
      }
      const group = groupOf(root, `slot ${cut.slot}`);
      const view = viewOf(group);
      const face = view.attributes['data-face'] as Side;
      const turn = facing(face);
      const drawn = middle(patchOf(only(group.children.filter((one) => hasClass(one, 'opening')))));
      const at: Vector = [cut.centre.x.toNumber(), cut.centre.y.toNumber(), cut.centre.z.toNumber()];
      const outline = patchOf(only(all(view).filter((one) => hasClass(one, 'face'))));
      if (cut.surface === face) {
        const [x, , z] = turned(turn, at);
        close(within(drawn, outline), within([x, z], extent(part, turn)), cut.slot);
      } else {
        const strip = patchOf(
          only(all(view).filter(({ attributes }) => attributes['data-edge'] === cut.surface)[0]?.children ?? []),
        );
        const edge = turned(turn, OUT[cut.surface]);
        const flat = followedBy(
          turn,
          turnTo([edge, TOWARD_READER], [TOWARD_READER, edge.map((n) => -n + 0) as unknown as Vector]),
        );
        const [x, , z] = turned(flat, at);
        const wanted = within([x, z], extent(part, flat));
        const bevel = part.cuts.find((one) => one.kind === 'bevel' && one.side === cut.surface);
        const half = result.fit.joints.find(({ id }) => id === cut.joint)?.halves.find((one) => one.part === part.id);
        if (bevel?.kind === 'bevel' && half) {
          // Square to the part's other edge nothing changes; along the mitre face the toe is the zero.
          const outer = axisOf(bevel.outer);
          const wide = part.box.hi[outer].sub(part.box.lo[outer]).toNumber() / Math.cos((bevel.angle * Math.PI) / 180);
          const fromToe = half.from.kind === 'toe' ? half.across.toNumber() : wide - half.across.toNumber();
          const got = within(drawn, strip);
          const across = Math.abs(edge[0]) > 0.5 ? 0 : 1;
          const along = 1 - across;
          expect(got[along]).toBeCloseTo(wanted[along] as number, 2);
          // From the face outward on paper.
          const outwardOnPaper =
            edge[0] > 0.5 || edge[2] < -0.5 ? (got[across] as number) : 1 - (got[across] as number);
          expect(outwardOnPaper).toBeCloseTo((bevel.outer === face ? fromToe : wide - fromToe) / wide, 2);
        } else close(within(drawn, strip), wanted, cut.slot);
        beside(strip, outline, edge);
      }
      checked += 1;
    }
    for (const cut of part.cuts) {
      if (cut.kind !== 'groove') continue;
      const shape = scene.parts
        .find((one) => one.part === part.id)
        ?.cuts.find((one) => one.kind === 'groove' && one.surface === cut.surface);
      const group = groupOf(root, shape?.shape ?? '');
      const view = viewOf(group);
      if (view.attributes['data-face'] !== cut.surface) continue;
      const turn = facing(cut.surface);
      const [a, b] = [cut.box.lo, cut.box.hi].map((p) =>
        turned(turn, [p.x.toNumber(), p.y.toNumber(), p.z.toNumber()]),
      ) as [Vector, Vector];
      const outline = patchOf(only(all(view).filter((one) => hasClass(one, 'face'))));
      const drawn = patchOf(only(group.children.filter((one) => hasClass(one, 'opening'))));
      const whole = extent(part, turn);
      close(
        within([drawn.left, drawn.top], outline),
        within([Math.min(a[0], b[0]), Math.max(a[2], b[2])], whole),
        part.id,
      );
      close(
        within([drawn.right, drawn.bottom], outline),
        within([Math.max(a[0], b[0]), Math.min(a[2], b[2])], whole),
        part.id,
      );
      checked += 1;
    }
  }
  return checked;
}

/** A slot along a cant: its place and the way it runs, told from the turned part and looked for on the face. */
function along(root: Read, part: FittedPart, cut: Extract<FittedPart['cuts'][number], { slot: string }>, turn: Slant) {
  const group = groupOf(root, `slot ${cut.slot}`);
  const view = viewOf(group);
  const face = facing(view.attributes['data-face'] as Side);
  const mouth = only(group.children.filter((one) => hasClass(one, 'opening')));
  const outline = patchOf(only(all(view).filter((one) => hasClass(one, 'face'))));
  const place = (u: number): Vector => {
    const angle = Math.atan2(turn.along.y.toNumber(), turn.along.x.toNumber());
    const [x, y] = [cut.centre.x.toNumber() + u, cut.centre.y.toNumber()];
    const out: Vector = [
      turn.origin.x.toNumber() + x * Math.cos(angle) - y * Math.sin(angle),
      turn.origin.y.toNumber() + x * Math.sin(angle) + y * Math.cos(angle),
      cut.centre.z.toNumber(),
    ];
    return turned(face, out);
  };
  const [x, , z] = place(0);
  close(within(middle(patchOf(mouth)), outline), within([x, z], extent(part, face)), cut.slot);
  // The two ends of its opening, as the corners of the polygon in pairs.
  const corners = (mouth.attributes.points ?? '').split(' ').map((p) => p.split(',').map(Number) as [number, number]);
  // As drawn before the view is moved to its place on the sheet.
  const placed = patchOf(mouth);
  const [dx, dy] = [
    placed.left - Math.min(...corners.map(([px]) => px)),
    placed.top - Math.min(...corners.map(([, py]) => py)),
  ];
  const ends = [0, 1].map((i) => {
    const [a, b] = [corners[i], corners[3 - i]] as [[number, number], [number, number]];
    return within([(a[0] + b[0]) / 2 + dx, (a[1] + b[1]) / 2 + dy], outline);
  });
  const wanted = [-1, 1].map((way) => {
    const [ex, , ez] = place((way * cut.length.value) / 2);
    return within([ex, ez], extent(part, face));
  });
  ends.forEach((end, i) => {
    close(end, wanted[i] as readonly [number, number], `${cut.slot}, end ${i}`);
  });
}

/** Within a hundredth of a millimetre of paper on a sheet some hundreds wide. */
function close(got: readonly [number, number], wanted: readonly [number, number], what: string): void {
  expect(got[0], `${what}, across`).toBeCloseTo(wanted[0], 2);
  expect(got[1], `${what}, up`).toBeCloseTo(wanted[1], 2);
}

/** The strip lies outside the face on the side its edge is on. */
function beside(strip: Patch, face: Patch, edge: Vector): void {
  if (edge[0] > 0.5) expect(strip.left).toBeGreaterThan(face.right);
  else if (edge[0] < -0.5) expect(strip.right).toBeLessThan(face.left);
  else if (edge[2] > 0.5) expect(strip.bottom).toBeLessThan(face.top);
  else expect(strip.top).toBeGreaterThan(face.bottom);
}

/** True if a slot of the part reaches beyond the part's own box. */
const runsOut = ({ box, cuts }: ScenePart): boolean =>
  cuts.some(
    (cut) =>
      cut.mouth && box && [0, 1, 2].some((i) => at(cut.box.lo, i) < at(box.lo, i) || at(cut.box.hi, i) > at(box.hi, i)),
  );

const at = (p: readonly number[], i: number): number => p[i] as number;

test('every slot and groove of every example lies on paper where the part has it when it is turned to the reader', async () => {
  let checked = 0;
  for (const one of await sound()) checked += check(one, one.scene);
  expect(checked).toBeGreaterThan(200);
});

test('so do slots that run out over both ends of an edge', async () => {
  const near = exampleText('broken/slot-near-edge.joinery').replaceAll('../shop', 'shop');
  const over = near.replace('lines 40, 160, 250', 'lines 5, 160, 316');
  const one = drawn('over the ends', await fitText(over), 'mm');
  expect(one.scene.parts.filter(runsOut).map(({ part }) => part)).toEqual(['lh', 'rh', 'shelf']);
  expect(check(one, one.scene)).toBe(12);
});

test('so does every slot of any cabinet', async () => {
  await fc.assert(
    fc.asyncProperty(random, async (plan) => {
      const one = await drawnFrom(plan);
      check(one, one.scene);
    }),
    { numRuns: 30 },
  );
});
