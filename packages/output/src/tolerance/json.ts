import {
  type Batch,
  type Bounded,
  type Contribution,
  figuresOf,
  ifCutAsPlanned,
  ifMeasured,
  type LengthFormat,
  Rational,
  type Reckoned,
  type Result,
  resultsOf,
  type Spec,
  type Trials,
  tryResults,
} from '@dryfit/engine';
import { cabinetLabel } from '../batch.js';
import { exact } from '../fit-json/lengths.js';
import { type Locate, placeOf } from '../place.js';
import { printText } from '../print/length.js';
import type { ToleranceJson, ToleranceResultJson } from './schema.js';
import { jointOf } from './words.js';

type CabinetJson = ToleranceJson['cabinets'][number];

/** What is asked of a cabinet: its errors, and what another batch does to it. */
export interface Asked {
  readonly reckoned: Reckoned;
  /** The cabinet as planned, and the batch that is asked about. */
  readonly batch?: { readonly planned: Spec; readonly measured: Batch } | undefined;
}

/** Errors of cabinets as data, nothing rounded that is exact. */
export function toleranceJson(
  asked: readonly Asked[],
  how: { readonly format: LengthFormat; readonly locate: Locate; readonly samples: number; readonly seed: number },
): ToleranceJson {
  const { samples, seed } = how;
  return {
    format: 'dryfit-tolerance',
    version: 1,
    samples,
    seed,
    cabinets: asked.map(({ reckoned, batch }): CabinetJson => {
      const results = resultsOf(reckoned);
      const trials = samples > 0 ? tryResults(results, samples, seed) : undefined;
      return {
        cabinet: printText(cabinetLabel(reckoned.fit), how.format),
        reckoning: reckoned.reckoning,
        unsaid: [...reckoned.unsaid],
        results: results.map((result) => resultJson(result, trials?.get(result.id), how)),
        ...(batch ? { batch: batchJson(batch.planned, batch.measured) } : {}),
      };
    }),
  };
}

function resultJson(
  result: Result,
  trials: Trials | undefined,
  how: { readonly format: LengthFormat; readonly locate: Locate },
): ToleranceResultJson {
  const { about, adds, id, limit } = result;
  const { worst, rootSumSquare, contributions } = figuresOf(adds);
  const joint = jointOf(result);
  const distance = 'distance' in about ? about.distance : 'span' in about ? about.span : undefined;
  return {
    id,
    kind: about.kind,
    ...(joint ? { joint: joint.id } : {}),
    ...('side' in about ? { side: about.side } : {}),
    ...(distance ? { through: [...distance.through], planned: off(distance.length) } : {}),
    ...(limit ? { limit: exact(limit) } : {}),
    worst: { least: off(worst.least), most: off(worst.most) },
    rootSumSquare: { middle: off(rootSumSquare.middle), half: approximate(rootSumSquare.half) },
    contributions: contributions.map((one) => contributionJson(one, how)),
    ...(trials ? { trials: trialsJson(trials) } : {}),
  };
}

function contributionJson(
  { of, coefficient, least, most, share }: Contribution,
  { format, locate }: { readonly format: LengthFormat; readonly locate: Locate },
): ToleranceResultJson['contributions'][number] {
  const place = placeOf(of.source, locate);
  const name = printText(of.words, format);
  return { name, origin: of.origin, coefficient, least, most, share, ...(place ? { place } : {}) };
}

const trialsJson = ({ mean, deviation, least, most, beyond }: Trials) => ({
  mean,
  deviation,
  least,
  most,
  ...(beyond === undefined ? {} : { beyond }),
});

function batchJson(planned: Spec, measured: Batch): CabinetJson['batch'] {
  const other = ifMeasured(planned, measured);
  return {
    measured: Object.fromEntries([...measured].map(([name, value]) => [name, exact(value)])),
    recut: other.recut.map(({ part, size, change }) => ({
      part,
      size,
      from: exact(change.from),
      to: exact(change.to),
    })),
    reset: other.reset.map(({ joint, part, what, change }) => ({
      joint,
      part,
      what,
      from: exact(change.from),
      to: exact(change.to),
    })),
    cuts: other.cuts.map(({ part, kind, joint }) => ({ part, kind, ...(joint === undefined ? {} : { joint }) })),
    asPlanned: ifCutAsPlanned(planned, measured).map(({ result, by }) => ({ id: result.id, by: off(by) })),
  };
}

const off = (length: Rational | Bounded) => (length instanceof Rational ? exact(length) : approximate(length));
const approximate = ({ value, error }: Bounded) => ({ mm: value, error });
