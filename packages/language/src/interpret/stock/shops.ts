import type {
  Band,
  Changes,
  Connector,
  Finding,
  Glue,
  Jig,
  Limits,
  Machine,
  Material,
  Pattern,
  Pose,
  Shop,
  Tolerances,
} from '@dryfit/engine';
import {
  type File,
  isBand,
  isChanges,
  isConnector,
  isGlue,
  isJig,
  isLimits,
  isMachine,
  isMaterial,
  isPattern,
  isPose,
  isStock,
  isTolerances,
  type Material as MaterialNode,
} from '../../generated/ast.js';
import { KeptWhileSame } from '../../kept.js';
import { remember } from '../../remember.js';
import type { Files } from '../../scope/files.js';
import { unitOf } from '../units.js';
import { readChanges } from './changes.js';
import { readConnector } from './connector.js';
import { readGlue } from './glue.js';
import { DEFAULT_LIMITS, DEFAULT_POSE, readLimits, readPose } from './house.js';
import { readJig } from './jig.js';
import { readMachine } from './machine.js';
import { readBand, readMaterial, reportLayerCycle } from './material.js';
import { readPattern } from './pattern.js';
import { sameEntry } from './same.js';
import { readTolerances } from './tolerances.js';

/** What one file keeps: its entries as data, by name, and what is wrong with them. */
interface FileStock {
  readonly materials: ReadonlyMap<string, Material>;
  readonly bands: ReadonlyMap<string, Band>;
  readonly machines: ReadonlyMap<string, Machine>;
  readonly connectors: ReadonlyMap<string, Connector>;
  readonly patterns: ReadonlyMap<string, Pattern>;
  readonly jig: Jig | undefined;
  readonly pose: Pose | undefined;
  readonly limits: Limits | undefined;
  readonly tolerances: Tolerances | undefined;
  readonly changes: Changes | undefined;
  readonly glue: Glue | undefined;
  readonly findings: readonly Finding[];
}

/** A shop put together from the stocks on the way to it. */
interface Branch {
  shop?: Shop;
  readonly next: WeakMap<FileStock, Branch>;
}

/** The stock each file draws on: the same object while nothing in it or in what it is made from has changed. */
export class Shops {
  private readonly stocks = new KeptWhileSame<File, FileStock>();
  private readonly shops: Branch = { next: new WeakMap() };
  /** By document, what its last text said. */
  private readonly last = new Map<string, FileStock>();
  /** Materials being read, the outermost first, so that layers of layers end. */
  private readonly open = new Set<MaterialNode>();
  /** The outermost of them has turned out to be a layer of itself. */
  private cyclic = false;

  constructor(private readonly files: Files) {}

  /** Everything a cabinet in this file draws on. */
  of(file: File): Shop {
    const stocks = this.files.layers(file).map((layer) => this.stock(layer));
    const kept = stocks.filter((stock) => stock !== NOTHING);
    let branch = this.shops;
    for (const stock of kept) branch = remember(branch.next, stock, () => ({ next: new WeakMap() }));
    branch.shop ??= assemble(kept);
    return branch.shop;
  }

  /** What is wrong with the entries of this file. */
  findings(file: File): readonly Finding[] {
    return this.stock(file).findings;
  }

  /** Connectors and layers may be of other files, so a file's stock is read again when one of these changes. */
  private stock(file: File): FileStock {
    if (!file.entries.some(isStock)) return NOTHING;
    return this.stocks.get(file, this.files.layers(file), () => {
      const uri = file.$document?.uri.toString() ?? '';
      const stock = keepEntries(this.read(file), this.last.get(uri));
      this.last.set(uri, stock);
      return stock;
    });
  }

  /** Lets go of what a document said that is no more. */
  forget(uri: string): void {
    this.last.delete(uri);
  }

  private read(file: File): FileStock {
    const unit = unitOf(file);
    const findings: Finding[] = [];
    const report = (finding: Finding) => void findings.push(finding);
    const stock = {
      materials: new Map<string, Material>(),
      bands: new Map<string, Band>(),
      machines: new Map<string, Machine>(),
      connectors: new Map<string, Connector>(),
      patterns: new Map<string, Pattern>(),
      jig: undefined as Jig | undefined,
      pose: undefined as Pose | undefined,
      limits: undefined as Limits | undefined,
      tolerances: undefined as Tolerances | undefined,
      changes: undefined as Changes | undefined,
      glue: undefined as Glue | undefined,
    };
    for (const entry of file.entries) {
      if (isMaterial(entry)) add(stock.materials, this.material(entry, report));
      else if (isBand(entry)) add(stock.bands, readBand(entry, unit, report));
      else if (isMachine(entry)) add(stock.machines, readMachine(entry, unit, report));
      else if (isConnector(entry)) add(stock.connectors, readConnector(entry, unit, report));
      else if (isPattern(entry)) add(stock.patterns, readPattern(entry, unit, report));
      else if (isJig(entry)) stock.jig ??= readJig(entry, unit, report);
      else if (isPose(entry)) stock.pose ??= readPose(entry, unit, report);
      else if (isLimits(entry)) stock.limits ??= readLimits(entry, unit, report);
      else if (isTolerances(entry)) stock.tolerances ??= readTolerances(entry, unit, report);
      else if (isChanges(entry)) stock.changes ??= readChanges(entry, unit, report);
      else if (isGlue(entry)) stock.glue ??= readGlue(entry, unit, report);
    }
    return { ...stock, findings };
  }

  /** A material may be layers of others; what is wrong with these is reported where they are defined. */
  private material(node: MaterialNode, report: (finding: Finding) => void): Material | undefined {
    if (this.open.has(node)) {
      if (node === [...this.open][0]) this.cyclic = true;
      return undefined;
    }
    const outermost = this.open.size === 0;
    if (outermost) this.cyclic = false;
    this.open.add(node);
    const unit = unitOf(node.$container as File);
    const material = readMaterial(node, unit, report, (layer) => this.material(layer, NOBODY));
    this.open.delete(node);
    if (outermost && this.cyclic) reportLayerCycle(node, unit, report);
    return material;
  }
}

/** Entries that say what they said before stay the same objects, so that nothing drawn from them need be drawn anew. */
function keepEntries(now: FileStock, before: FileStock | undefined): FileStock {
  if (!before) return now;
  return {
    materials: keepOf(now.materials, before.materials),
    bands: keepOf(now.bands, before.bands),
    machines: keepOf(now.machines, before.machines),
    connectors: keepOf(now.connectors, before.connectors),
    patterns: keepOf(now.patterns, before.patterns),
    jig: now.jig && sameEntry(now.jig, before.jig),
    pose: now.pose && sameEntry(now.pose, before.pose),
    limits: now.limits && sameEntry(now.limits, before.limits),
    tolerances: now.tolerances && sameEntry(now.tolerances, before.tolerances),
    changes: now.changes && sameEntry(now.changes, before.changes),
    glue: now.glue && sameEntry(now.glue, before.glue),
    findings: now.findings,
  };
}

const keepOf = <T extends object>(
  now: ReadonlyMap<string, T>,
  before: ReadonlyMap<string, T>,
): ReadonlyMap<string, T> =>
  new Map([...now].map(([name, entry]): [string, T] => [name, sameEntry(entry, before.get(name))]));

const NOBODY = () => undefined;

/** The stock of a file that keeps none. */
const NOTHING: FileStock = {
  materials: new Map(),
  bands: new Map(),
  machines: new Map(),
  connectors: new Map(),
  patterns: new Map(),
  jig: undefined,
  pose: undefined,
  limits: undefined,
  tolerances: undefined,
  changes: undefined,
  glue: undefined,
  findings: [],
};

/** The nearest entry of a name wins; so do the nearest jig, pose, limits and tolerances. */
function assemble(stocks: readonly FileStock[]): Shop {
  return {
    materials: merge(stocks.map((stock) => stock.materials)),
    bands: merge(stocks.map((stock) => stock.bands)),
    machines: merge(stocks.map((stock) => stock.machines)),
    connectors: merge(stocks.map((stock) => stock.connectors)),
    patterns: merge(stocks.map((stock) => stock.patterns)),
    jig: stocks.find((stock) => stock.jig)?.jig,
    pose: stocks.find((stock) => stock.pose)?.pose ?? DEFAULT_POSE,
    limits: stocks.find((stock) => stock.limits)?.limits ?? DEFAULT_LIMITS,
    tolerances: stocks.find((stock) => stock.tolerances)?.tolerances,
    changes: stocks.find((stock) => stock.changes)?.changes,
    glue: stocks.find((stock) => stock.glue)?.glue,
  };
}

function add<T extends { readonly name: string }>(entries: Map<string, T>, entry: T | undefined): void {
  if (entry && !entries.has(entry.name)) entries.set(entry.name, entry);
}

function merge<T>(maps: readonly ReadonlyMap<string, T>[]): ReadonlyMap<string, T> {
  const [first, ...others] = maps.filter((map) => map.size > 0);
  if (first === undefined || others.length === 0) return first ?? new Map();
  const merged = new Map(first);
  for (const map of others) for (const [name, entry] of map) if (!merged.has(name)) merged.set(name, entry);
  return merged;
}
