import { type Finding, type FitResult, fit, type Shop, type Spec } from '@dryfit/engine';
import { AstUtils, type Reference } from 'langium';
import { Cabinet, type File, isCabinet, type JobLine } from '../generated/ast.js';
import { type Anchor, follow } from '../interpret/anchor.js';
import { interpretCabinet } from '../interpret/cabinet.js';
import { readOverrides } from '../interpret/job.js';
import type { Overrides } from '../interpret/parameters.js';
import type { Shops } from '../interpret/stock/shops.js';
import { unitOf } from '../interpret/units.js';
import { KeptWhileSame } from '../kept.js';
import type { Unit } from '../parser/numbers.js';
import { remember } from '../remember.js';
import type { Files } from '../scope/files.js';
import { namesOfFile } from '../scope/names.js';
import { DrawnOn } from './drawn-on.js';

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

/** A variant and all that it was worked out from beside the cabinet's text and units. */
interface Kept {
  readonly variant: Variant;
  readonly anchor: Anchor;
  readonly shop: DrawnOn;
  /** Every name in the cabinet stood for something. */
  readonly linked: boolean;
  readonly overrides: Overrides;
}

/** What was last worked out for a cabinet of a name, from which text. */
interface Last {
  readonly text: string;
  readonly unit: Unit;
  readonly variants: Map<string, Kept>;
}

/** The same, for the tree of the text as it stands. */
interface Current extends Last {
  readonly offset: number;
  readonly shop: Shop;
}

/** Variants of a cabinet that are kept; a job whose values are being typed makes ever new ones. */
const MOST = 64;

/**
 * Cabinets worked out, kept while neither their own text nor anything it draws on changes, wherever in its file the
 * text moves to. Checks, hovers and tables ask here, so that each set of parameters is worked out once.
 */
export class Fits {
  private readonly kept = new KeptWhileSame<Cabinet, Current>();
  /** By document and name, so that typing in one cabinet does not work out the others again. */
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

  /** The same where it has been worked out and still holds; else undefined, and nothing is worked out. */
  known(cabinet: Cabinet, thickness: Thickness = 'measured'): Variant | undefined {
    const current = this.current(cabinet);
    const kept = current.variants.get(keyOf(NONE, thickness));
    if (!kept || !this.stillHolds(kept, cabinet, current)) return undefined;
    bringUp(kept, NONE, current);
    return kept.variant;
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

  /** How many variants are held, of how many cabinets. */
  get held(): { readonly cabinets: number; readonly variants: number } {
    const all = [...this.last.values()].flatMap((ofFile) => [...ofFile.values()]);
    return { cabinets: all.length, variants: all.reduce((sum, { variants }) => sum + variants.size, 0) };
  }

  /** Lets go of what was worked out for a document that is no more. */
  forget(uri: string): void {
    this.last.delete(uri);
  }

  private variant(cabinet: Cabinet, overrides: Overrides, thickness: Thickness): Variant {
    const current = this.current(cabinet);
    const key = keyOf(overrides, thickness);
    const { variants } = current;
    const known = variants.get(key);
    const kept = known && this.stillHolds(known, cabinet, current) ? known : undefined;
    const now = kept ?? this.workOut(cabinet, overrides, thickness, current);
    if (kept) bringUp(kept, overrides, current);
    // The one asked for last goes to the end, so that the first one is the one not asked for longest.
    variants.delete(key);
    variants.set(key, now);
    for (const oldest of variants.keys()) if (variants.size > MOST) variants.delete(oldest);
    return now.variant;
  }

  private workOut(cabinet: Cabinet, overrides: Overrides, thickness: Thickness, { shop, unit }: Current): Kept {
    const drawn = new DrawnOn(shop);
    const { spec, findings, anchor } = interpretCabinet(cabinet, overrides, { shop: drawn, unit, thickness });
    const result = this.work(spec);
    const variant = { result, findings: [...findings, ...result.findings] };
    return { variant, anchor, shop: drawn, linked: isLinked(cabinet), overrides };
  }

  /** A name that stood for nothing was never asked of the shop, so nothing is known of what it would change now. */
  private stillHolds({ shop, linked }: Kept, cabinet: Cabinet, current: Current): boolean {
    return shop.isOf(current.shop) || (shop.holdsFor(current.shop) && linked && isLinked(cabinet));
  }

  private current(cabinet: Cabinet): Current {
    const file = rootOf(cabinet);
    return this.kept.get(cabinet, this.files.layers(file), () => {
      const { text = '', offset = 0 } = cabinet.$cstNode ?? {};
      const unit = unitOf(file);
      const ofFile = remember(this.last, file.$document?.uri.toString() ?? '', () => new Map<string, Last>());
      const key = keyOfCabinet(cabinet, file);
      const last = ofFile.get(key);
      const variants = last?.text === text && last.unit === unit ? last.variants : new Map<string, Kept>();
      ofFile.set(key, { text, unit, variants });
      if (ofFile.size > countOf(file)) keepOnly(ofFile, file);
      return { text, unit, variants, offset, shop: this.shops.of(file) };
    });
  }
}

const NONE: Overrides = new Map();

const rootOf = (node: Cabinet | JobLine): File => AstUtils.findRootNode(node) as File;

/** Takes a variant along to where its cabinet, the entries it draws on and the values given to it stand now. */
function bringUp({ anchor, shop, overrides }: Kept, now: Overrides, current: Current): void {
  anchor.moveTo(current.offset);
  shop.show(current.shop);
  for (const [name, { source }] of overrides) follow(source, now.get(name)?.source);
}

/** The name; of several cabinets of one name, the first goes by it, since each has a place of its own. */
function keyOfCabinet(cabinet: Cabinet, file: File): string {
  const first = namesOfFile(file).byType.get(cabinet.$type)?.get(cabinet.name);
  return first === undefined || first === cabinet ? cabinet.name : `${cabinet.name} ${file.entries.indexOf(cabinet)}`;
}

/** How many cabinets a file has at most; counted without going through it. */
function countOf(file: File): number {
  const { byType, duplicates } = namesOfFile(file);
  return (byType.get(Cabinet.$type)?.size ?? 0) + duplicates.length;
}

/** Lets go of cabinets that the file no longer has, such as one whose name is being typed. */
function keepOnly(ofFile: Map<string, Last>, file: File): void {
  const present = new Set(file.entries.filter(isCabinet).map((cabinet) => keyOfCabinet(cabinet, file)));
  for (const key of ofFile.keys()) if (!present.has(key)) ofFile.delete(key);
}

/** Names of a text that stand for nothing, gone through once for as long as the text stays linked. */
const unlinked = new WeakMap<readonly Reference[], readonly Reference[]>();

/** Every name in a cabinet stands for something. */
function isLinked(cabinet: Cabinet): boolean {
  const { offset = 0, end = 0 } = cabinet.$cstNode ?? {};
  const references = cabinet.$container.$document?.references as Reference[] | undefined;
  if (!references) return false;
  const lost = remember(unlinked, references, () => references.filter(({ error }) => error));
  return !lost.some(({ $refNode }) => $refNode === undefined || ($refNode.offset >= offset && $refNode.end <= end));
}

function keyOf(overrides: Overrides, thickness: Thickness): string {
  const values = [...overrides].map(
    ([name, { value, tolerance }]) => `${name}=${value} +${tolerance?.plus ?? 0} -${tolerance?.minus ?? 0}`,
  );
  return [thickness, ...values.sort()].join('\n');
}
