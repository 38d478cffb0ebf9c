import { type Finding, type FitResult, fit, type Spec } from '@dryfit/engine';
import { AstUtils } from 'langium';
import type { Cabinet, File, JobLine } from '../generated/ast.js';
import { interpretCabinet } from '../interpret/cabinet.js';
import { readOverrides } from '../interpret/job.js';
import type { Overrides } from '../interpret/parameters.js';
import type { Shops } from '../interpret/stock/shops.js';
import { unitOf } from '../interpret/units.js';
import { remember } from '../remember.js';
import type { Files } from '../scope/files.js';

export type Thickness = Spec['thickness'];

/** A cabinet worked out with one set of parameters. */
export interface Variant {
  readonly result: FitResult;
  /** What is wrong with its text and with what comes of it. */
  readonly findings: readonly Finding[];
}

/** A line of a job, worked out. */
export interface MadeLine {
  readonly cabinet: Cabinet;
  readonly variant: Variant;
  /** What is wrong with the values the line gives. */
  readonly findings: readonly Finding[];
}

interface Kept {
  /** What the cabinet was worked out from: the trees of all files it sees. */
  readonly from: readonly File[];
  readonly variants: Map<string, Variant>;
}

/**
 * Cabinets worked out, kept while neither their own text nor anything it draws on changes. Checks, hovers and tables
 * ask here, so that each set of parameters is worked out once.
 */
export class Fits {
  private readonly kept = new WeakMap<Cabinet, Kept>();

  constructor(
    private readonly files: Files,
    private readonly shops: Shops,
  ) {}

  /** A cabinet with the values written in it. */
  of(cabinet: Cabinet, thickness: Thickness = 'measured'): Variant {
    return this.variant(cabinet, NONE, thickness);
  }

  /** A cabinet as a line of a job makes it; undefined if the line names none. */
  line(line: JobLine, thickness: Thickness = 'measured'): MadeLine | undefined {
    const cabinet = line.cabinet?.ref;
    if (!cabinet) return undefined;
    const findings: Finding[] = [];
    const given = readOverrides(line, unitOf(rootOf(line)), (finding) => void findings.push(finding));
    const written = this.of(cabinet, thickness).result.spec.parameters;
    // A value that is the one written anyway makes no variant.
    const other = [...given].filter(([name, { value, tolerance }]) => {
      const own = written.find((parameter) => parameter.name === name);
      return tolerance !== undefined || !own?.value.equals(value);
    });
    return { cabinet, variant: this.variant(cabinet, new Map(other), thickness), findings };
  }

  private variant(cabinet: Cabinet, overrides: Overrides, thickness: Thickness): Variant {
    return remember(this.variants(cabinet), keyOf(overrides, thickness), () => {
      const file = rootOf(cabinet);
      const around = { shop: this.shops.of(file), unit: unitOf(file), thickness };
      const { spec, findings } = interpretCabinet(cabinet, overrides, around);
      const result = fit(spec);
      return { result, findings: [...findings, ...result.findings] };
    });
  }

  private variants(cabinet: Cabinet): Map<string, Variant> {
    const from = this.files.layers(rootOf(cabinet));
    const kept = this.kept.get(cabinet);
    if (kept && kept.from.length === from.length && kept.from.every((file, i) => file === from[i]))
      return kept.variants;
    const variants = new Map<string, Variant>();
    this.kept.set(cabinet, { from, variants });
    return variants;
  }
}

const NONE: Overrides = new Map();

const rootOf = (node: Cabinet | JobLine): File => AstUtils.findRootNode(node) as File;

function keyOf(overrides: Overrides, thickness: Thickness): string {
  const values = [...overrides].map(
    ([name, { value, tolerance }]) => `${name}=${value} +${tolerance?.plus ?? 0} -${tolerance?.minus ?? 0}`,
  );
  return [thickness, ...values.sort()].join('\n');
}
