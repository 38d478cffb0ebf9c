import { type Finding, type FitResult, fit, type Shop, type Spec } from '@dryfit/engine';
import { AstUtils } from 'langium';
import type { Cabinet, File, JobLine } from '../generated/ast.js';
import { interpretCabinet } from '../interpret/cabinet.js';
import { readOverrides } from '../interpret/job.js';
import type { Overrides } from '../interpret/parameters.js';
import type { Shops } from '../interpret/stock/shops.js';
import { unitOf } from '../interpret/units.js';
import { KeptWhileSame } from '../kept.js';
import type { Unit } from '../parser/numbers.js';
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

/** What was last worked out for a cabinet of a name, and all that it was worked out from. */
interface Last {
  readonly text: string;
  readonly offset: number;
  readonly shop: Shop;
  readonly unit: Unit;
  readonly variants: Map<string, Variant>;
}

/**
 * Cabinets worked out, kept while neither their own text nor anything it draws on changes. Checks, hovers and tables
 * ask here, so that each set of parameters is worked out once.
 */
export class Fits {
  private readonly kept = new KeptWhileSame<Cabinet, Map<string, Variant>>();
  /** By document and name, so that typing in one cabinet does not work out those above it again. */
  private readonly last = new Map<string, Map<string, Last>>();

  constructor(
    private readonly files: Files,
    private readonly shops: Shops,
    private readonly work: (spec: Spec) => FitResult = fit,
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
      const result = this.work(spec);
      return { result, findings: [...findings, ...result.findings] };
    });
  }

  /** Lets go of what was worked out for a document that is no more. */
  forget(uri: string): void {
    this.last.delete(uri);
  }

  private variants(cabinet: Cabinet): Map<string, Variant> {
    const file = rootOf(cabinet);
    return this.kept.get(cabinet, this.files.layers(file), () => {
      const { text = '', offset = 0 } = cabinet.$cstNode ?? {};
      const [shop, unit] = [this.shops.of(file), unitOf(file)];
      const ofFile = remember(this.last, file.$document?.uri.toString() ?? '', () => new Map<string, Last>());
      const last = ofFile.get(cabinet.name);
      const same = last?.text === text && last.offset === offset && last.shop === shop && last.unit === unit;
      const variants = same ? last.variants : new Map<string, Variant>();
      ofFile.set(cabinet.name, { text, offset, shop, unit, variants });
      return variants;
    });
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
