import { fit as fitSpec, glueUp, type Spec, stuckParts } from '@dryfit/engine';
import { workOut } from '../../packages/engine/src/pipeline.js';
import { fitText } from '../support/read.js';

/**
 * What it costs to know whether a cabinet can be put together, beside all else that is worked out of it at a key, and
 * what its steps cost, which are asked for alone. Processor time, medians; nothing here is a test.
 */
const ROUNDS = 9;
const PARTS = [10, 100, 500] as const;

/** A bookcase of so many parts: sides, top, base, back, and shelves on both sides of a divider. */
function bookcase(parts: number): string {
  const shelves = Math.floor((parts - 6) / 2);
  const heights = Array.from({ length: shelves }, (_, i) => 60 * (i + 1)).join(', ');
  const stand = 'rear against back.groove.front  flush front';
  return `import "shop.joinery"

cabinet Tall {
  part lh, rh, divider : upright of birch18
  part top, base       : level of birch18
  parts lshelf 1 to ${shelves} : level of birch18
  parts rshelf 1 to ${shelves} : level of birch18
  part back            : facing of ply6
  width 1200 over lh and rh
  height ${60 * shelves + 200} of lh
  depth 300 of lh
  connect biscuit20 by book3
  butt top between lh and rh { flush top, rear, front }
  butt base between lh and rh { flush bottom, rear, front }
  groove back between lh and rh, base and top { rear set back 10 from lh  width 6  depth 8  clearance 0.5 }
  butt divider between base and top { centred between lh and rh  ${stand}  reference left }
  butt lshelf between lh and divider { bottom ${heights} above base.top  ${stand} }
  butt rshelf between divider and rh { bottom ${heights} above base.top  ${stand} }
}
`;
}

function processorTime(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const median = (times: readonly number[]): number => [...times].sort((a, b) => a - b)[times.length >> 1] ?? Number.NaN;

interface Cost {
  readonly parts: number;
  readonly whole: number;
  readonly order: number;
  readonly steps: number;
}

function costOf(spec: Spec): Cost {
  const times = { whole: [] as number[], order: [] as number[], steps: [] as number[] };
  let parts = 0;
  for (let round = 0; round < ROUNDS; round++) {
    times.whole.push(processorTime(() => fitSpec(spec)));
    // A fit of its own each time: what has been found out of one is kept with it.
    const fresh = workOut(spec).fit;
    parts = fresh.parts.length;
    times.order.push(processorTime(() => stuckParts(fresh)));
    times.steps.push(processorTime(() => glueUp(fresh)));
  }
  return { parts, whole: median(times.whole), order: median(times.order), steps: median(times.steps) };
}

/** A table of costs, as Markdown. */
export async function costOfOrders(): Promise<string> {
  const costs: Cost[] = [];
  for (const parts of PARTS) costs.push(costOf((await fitText(bookcase(parts))).spec));
  const [, middle, last] = costs;
  const exponent =
    middle && last ? Math.log(last.order / middle.order) / Math.log(last.parts / middle.parts) : Number.NaN;
  const rows = costs.map(
    ({ parts, whole, order, steps }) =>
      `| ${parts} | 1 | ${(order / whole).toFixed(3)} | ${(steps / whole).toFixed(3)} |`,
  );
  return `Whether there is an order to put a cabinet together, which is asked at every key, and the steps of its glue-up, which
are asked for alone, in parts of what it takes to work the cabinet out with all its checks. From ${middle?.parts} to ${last?.parts} parts the
first grows with the power ${exponent.toFixed(2)} of their number.

| parts | worked out | order | steps |
| --- | --- | --- | --- |
${rows.join('\n')}
`;
}
