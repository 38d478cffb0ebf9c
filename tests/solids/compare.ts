import { type Finding, fit as fitSpec } from '@dryfit/engine';
import type { Manifold } from 'manifold-3d';
import { type Plan, specOf } from './assemblies.js';
import { gapOf, goesIn, type Kind, type Measured, type Measurement, measure, seatedMesh } from './measure.js';
import { madeOf, partMesh } from './meshes.js';
import { type Told, toldBy } from './told.js';
import type { Workshop } from './workshop.js';

/** What one assembly came to. */
export interface Outcome {
  /** Kinds that were measured, and whether each was found by the engine anywhere in it. */
  readonly kinds: ReadonlyMap<Kind, boolean>;
  /** Whether any measure lay within half a millimetre of its limit. */
  readonly near: boolean;
  /** Verdicts that differ where the measure is too near its limit to tell. */
  readonly open: number;
  /** What engine and meshes say differently, in words; empty if all is well. */
  readonly faults: readonly string[];
}

/** A disagreement is let pass where the true measure is nearer to its limit than this, mm; figures must agree as far. */
export const LET_PASS = 0.02;
const NEAR = 0.5;

/** `heard` is what is taken for the engine's findings; the test of this test leaves some of them out. */
export function compare(
  shop: Workshop,
  plan: Plan,
  heard: (findings: readonly Finding[]) => readonly Finding[] = (findings) => findings,
): Outcome {
  const spec = specOf(plan);
  const result = fitSpec(spec);
  const findings = heard(result.findings);
  try {
    const measurement = measure(shop, spec, result.fit);
    const told = toldBy(findings, spec, result.fit);
    const measured = worst(measurement.measured);
    const faults: string[] = [];
    let open = 0;
    for (const it of measured.values()) {
      const figures = told.get(it.kind)?.get(it.key);
      const finds = figures !== undefined;
      if (finds !== it.fails) {
        if (it.certain(LET_PASS))
          faults.push(
            `${it.kind} ${it.key}: measured ${it.margin ?? (it.fails ? 'not going in' : 'going in')}, ${finds ? 'told' : 'not told'}`,
          );
        else open += 1;
      } else if (figures) faults.push(...differing(it, figures));
    }
    for (const [kind, of] of told)
      for (const key of of.keys())
        if (!measured.has(`${kind} ${key}`)) faults.push(`${kind} ${key}: told, but nothing of the kind is there`);
    faults.push(...binding(shop, measurement, told), ...untold(shop, measurement, findings));
    return { kinds: kindsOf(measured, told), near: [...measured.values()].some(isNear), open, faults };
  } finally {
    shop.sweepUp();
  }
}

const isNear = ({ margin }: Measured): boolean => margin !== undefined && margin !== 0 && Math.abs(margin) <= NEAR;

/** Of several measures of one kind about one thing the worst. */
function worst(measured: readonly Measured[]): ReadonlyMap<string, Measured> {
  const found = new Map<string, Measured>();
  for (const it of measured) {
    const name = `${it.kind} ${it.key}`;
    const before = found.get(name);
    if (!before || (it.margin ?? 0) < (before.margin ?? 0)) found.set(name, it);
  }
  return found;
}

function kindsOf(measured: ReadonlyMap<string, Measured>, told: Told): ReadonlyMap<Kind, boolean> {
  const kinds = new Map<Kind, boolean>();
  for (const { kind } of measured.values()) kinds.set(kind, (told.get(kind)?.size ?? 0) > 0);
  return kinds;
}

function* differing({ kind, key, figures, otherwise }: Measured, told: readonly number[]): Generator<string> {
  if (kind === 'connector-binds' || told.length === 0 || figures.length === 0) return;
  if (agree(told, figures, LET_PASS) || (otherwise && agree(told, otherwise(), 2 * LET_PASS))) return;
  const listed = (lengths: readonly number[]): string => lengths.map((length) => length.toFixed(4)).join(' x ');
  yield `${kind} ${key}: measured ${listed(figures)}, told ${listed(told)}`;
}

/** A measure that was not looked for so far away agrees with any. */
const agree = (told: readonly number[], measured: readonly number[], within: number): boolean =>
  told.every((figure, i) => {
    const other = measured[i];
    return other !== undefined && (!Number.isFinite(other) || Math.abs(figure - other) <= within);
  });

/**
 * A connector that is said to bind by so much goes in once it is made narrower by that, and not a little before; one
 * whose corners bind goes into a mortise as long as is said to be enough, and not into a shorter one.
 */
function* binding(shop: Workshop, { seats }: Measurement, told: Told): Generator<string> {
  for (const [name, figures] of told.get('connector-binds') ?? []) {
    const seat = seats.find(({ connector }) => connector.name === name);
    const [slot, by] = figures;
    if (!seat || slot === undefined || by === undefined) continue;
    const made = madeOf(seat.connector);
    if (slot > 0) {
      const now = seat.connector.slot?.toNumber() ?? made.along;
      if (!goesIn(shop, seat, made, slot - now + LET_PASS)) yield `${name}: does not go into a mortise ${slot} long`;
      if (goesIn(shop, seat, made, slot - now - 0.05)) yield `${name}: goes into a mortise shorter than ${slot}`;
      continue;
    }
    const narrower = (less: number) => ({ ...made, glue: made.glue - less });
    if (!goesIn(shop, seat, narrower(by + LET_PASS))) yield `${name}: binds by more than ${by}`;
    if (goesIn(shop, seat, narrower(by - LET_PASS))) yield `${name}: binds by less than ${by}`;
  }
}

/** Whatever runs through a connector where it sits (another connector, a third part) is behind some finding. */
function* untold(shop: Workshop, { seats, parts }: Measurement, findings: readonly Finding[]): Generator<string> {
  const told = new Set(
    findings.filter(({ severity }) => severity === 'error').flatMap(({ about }) => about.parts ?? []),
  );
  const bodies = seats.flatMap((seat) => {
    const own = [seat.joint.entering, seat.joint.host];
    const mesh = own.some((part) => told.has(part)) ? undefined : seatedMesh(shop, seat);
    return mesh ? [{ seat, own, mesh }] : [];
  });
  const others = parts.filter(({ id }) => !told.has(id)).map((part) => ({ part, mesh: partMesh(shop, part) }));
  const runsInto = (a: Manifold, b: Manifold): boolean => gapOf(a, b, 0.1) === 0 && shop.both(a, b).volume() > TOO_MUCH;
  for (const [i, { seat, own, mesh }] of bodies.entries()) {
    for (const other of bodies.slice(i + 1))
      if (runsInto(mesh, other.mesh))
        yield `connectors of ${seat.joint.id} and ${other.seat.joint.id} meet, and nothing is told`;
    for (const { part, mesh: body } of others)
      if (!own.includes(part.id) && runsInto(mesh, body))
        yield `a connector of ${seat.joint.id} runs into ${part.id}, and nothing is told`;
  }
}

/** Volume of one body in another that is told, mm³. */
const TOO_MUCH = 1e-3;
