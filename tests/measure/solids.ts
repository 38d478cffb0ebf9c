import type { Spec } from '@dryfit/engine';
import { createJoineryServices, examineFiles } from '@dryfit/language';
import { EmptyFileSystem, URI } from 'langium';
import type { Manifold } from 'manifold-3d';
import { type CheckContext, runChecks } from '../../packages/engine/src/checks/check.js';
import { connectorBinds } from '../../packages/engine/src/checks/connector-binds.js';
import { partsOverlap } from '../../packages/engine/src/checks/parts-overlap.js';
import { slotsCollide } from '../../packages/engine/src/checks/slots-collide.js';
import { workOut } from '../../packages/engine/src/pipeline.js';
import { gapOf } from '../solids/measure.js';
import { openingMesh, partMesh, recessMesh, standOf } from '../solids/meshes.js';
import { Workshop } from '../solids/workshop.js';
import { exampleText } from '../support/examples.js';

/**
 * What it costs to look for clashes in one cabinet of many parts, beside reading its text and beside doing the same
 * with meshes. Processor time, medians; nothing here is a test.
 */
const ROUNDS = 9;
const SIZES = [10, 100, 500] as const;
const SHELVES = 12;
const CHECKS = [slotsCollide, partsOverlap, connectorBinds];

/** A wall of bays with twelve shelves each, those of one bay higher than those of the next. */
export function wallOfBays(parts: number): string {
  const lines: string[] = [];
  const uprights = Math.ceil(parts / (SHELVES + 1)) + 1;
  for (let i = 0; i < uprights; i++) {
    lines.push(`part u${i} : upright of birch18`, `height 860 of u${i}`, `depth 320 of u${i}`);
    if (i > 0)
      lines.push(`width 400 between u${i - 1} and u${i}`, `u${i}.bottom flush with u0`, `u${i}.rear flush with u0`);
  }
  for (let n = 0; n < parts - uprights; n++) {
    const bay = n % (uprights - 1);
    const z = 40 + 65 * Math.floor(n / (uprights - 1)) + 30 * (bay % 2);
    lines.push(
      `part s${n} : level of birch18`,
      `butt s${n} between u${bay} and u${bay + 1} {\n    bottom ${z} above u0.bottom\n    flush rear, front\n  }`,
    );
  }
  const body = lines.map((line) => `  ${line}`).join('\n');
  return `units mm\nimport "shop.joinery"\n\ncabinet Stacks {\n  connect biscuit20 by lines 70, 160, 250\n${body}\n}\n`;
}

async function specOf(text: string): Promise<Spec> {
  const texts = new Map([
    ['memory:/shop.joinery', exampleText('shop.joinery')],
    ['memory:/stacks.joinery', text],
  ]);
  const services = createJoineryServices({
    fileSystemProvider: () =>
      Object.assign(EmptyFileSystem.fileSystemProvider(), {
        readFile: async (uri: URI) => texts.get(uri.toString()) ?? '',
      }),
  });
  const [file] = await examineFiles([URI.parse('memory:/stacks.joinery')], services);
  const spec = file?.cabinets[0]?.spec;
  if (!spec) throw new Error('the cabinet to measure with cannot be read');
  return spec;
}

const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0;

/** Processor time of one go, ms, the median of several after one that is not counted. */
function cost(work: () => void, rounds = ROUNDS): number {
  work();
  return median(
    Array.from({ length: rounds }, () => {
      const before = process.cpuUsage();
      work();
      const { user, system } = process.cpuUsage(before);
      return (user + system) / 1000;
    }),
  );
}

interface Row {
  readonly parts: number;
  readonly cuts: number;
  readonly parse: number;
  readonly clashes: number;
  readonly all: number;
  readonly meshes: number;
}

async function rowOf(parts: number, shop: Workshop): Promise<Row> {
  const text = wallOfBays(parts);
  const spec = await specOf(text);
  const parser = createJoineryServices(EmptyFileSystem).joinery.parser.LangiumParser;
  // A fit is new after every edit, and so is the context of the checks: nothing is carried from one go to the next.
  const contexts = Array.from({ length: ROUNDS + 1 }, () => workOut(spec));
  const found = runChecks(CHECKS, contexts[0] as CheckContext);
  if (found.length > 0) throw new Error(`the cabinet to measure with has clashes: ${found[0]?.code}`);
  let next = 0;
  const fresh = Array.from({ length: ROUNDS + 1 }, () => workOut(spec));
  return {
    parts: spec.parts.length,
    cuts: contexts[0]?.fit.parts.reduce((sum, part) => sum + part.cuts.length, 0) ?? 0,
    parse: cost(() => parser.parse(text)),
    clashes: cost(() => runChecks(CHECKS, fresh[next++ % fresh.length] as CheckContext)),
    all: cost(() => workOut(spec)),
    meshes: cost(() => withMeshes(shop, contexts[1] as CheckContext), 1),
  };
}

/** The same questions put to meshes: each part against its neighbours, each cut of a part against the others near it. */
function withMeshes(shop: Workshop, { fit, joint }: CheckContext): void {
  const parts = fit.parts.map((part) => ({ part, mesh: partMesh(shop, part) }));
  for (const [i, one] of parts.entries())
    for (const two of parts.slice(i + 1))
      if (gapOf(one.mesh, two.mesh, 0.001) === 0) shop.both(one.mesh, two.mesh).volume();
  for (const part of fit.parts) {
    const cuts = part.cuts.flatMap((cut): readonly Manifold[] => {
      if (cut.kind === 'bevel') return [];
      if ('box' in cut) return [recessMesh(shop, cut)];
      const own = joint(cut.joint);
      return own ? [openingMesh(shop, cut, standOf(cut, own))] : [];
    });
    for (const [i, one] of cuts.entries()) for (const two of cuts.slice(i + 1)) gapOf(one, two, 3);
  }
  shop.sweepUp();
}

/** The table of what clashes cost, as Markdown. */
export async function costOfSolids(): Promise<string> {
  const shop = await Workshop.open();
  const rows: Row[] = [];
  for (const parts of SIZES) rows.push(await rowOf(parts, shop));
  const [first, last] = [rows[0] as Row, rows.at(-1) as Row];
  const exponent = Math.log(last.clashes / first.clashes) / Math.log(last.parts / first.parts);
  const table = [
    [
      'parts',
      'cuts',
      'reading the text, ms',
      'sizes, joints and cuts, ms',
      'clashes, ms',
      'clashes beside reading',
      'with meshes, ms',
      'meshes beside clashes',
    ],
    Array.from({ length: 8 }, () => '---'),
    ...rows.map(({ parts, cuts, parse, all, clashes, meshes }) => [
      String(parts),
      String(cuts),
      parse.toFixed(2),
      all.toFixed(2),
      clashes.toFixed(2),
      (clashes / parse).toFixed(2),
      meshes.toFixed(0),
      (meshes / clashes).toFixed(0),
    ]),
  ]
    .map((cells) => `| ${cells.join(' | ')} |`)
    .join('\n');
  return `${table}

Processor time, medians of ${ROUNDS} goes, in one cabinet. Clashes are cuts near one another, parts in each other's way and connectors in their
slots, looked for anew as after an edit. Growth exponent from ${first.parts} to ${last.parts} parts: ${exponent.toFixed(2)} (aim at most 1.2).
`;
}
