import { type Attitude, type Finding, type PartId, type PartSpec, say } from '@dryfit/engine';
import { noSuchPart } from '../checks/no-such-part.js';
import { notWhole } from '../checks/not-whole.js';
import { onePartWanted } from '../checks/one-part-wanted.js';
import { type Cabinet, isPartLine, type Part, type PartLine, type PartRef, type Plane } from '../generated/ast.js';
import { namesOfCabinet } from '../scope/names.js';
import type { Places } from './source.js';
import { evaluateCount, type Reading } from './values.js';
import { wordsOfRef } from './words.js';

/** More like parts than any cabinet has: beyond it a number was mistyped. */
const MOST = 999;

interface Kind {
  /** Ids of its parts, in the order of their numbers. */
  readonly ids: readonly PartId[];
  /** The least number, for parts that are numbered. */
  readonly first?: number | undefined;
}

/** The parts of a cabinet, and what names in its statements stand for. */
export class Parts {
  readonly specs: PartSpec[] = [];
  private readonly kinds = new Map<Part, Kind>();
  private readonly attitudes = new Map<PartId, Attitude>();

  constructor(
    private readonly places: Places,
    private readonly report: (finding: Finding) => void,
  ) {}

  /** Reads every declaration; one whose text is broken declares nothing, which has been reported. */
  readAll(cabinet: Cabinet, reading: Reading): void {
    const names = namesOfCabinet(cabinet).parts;
    for (const item of cabinet.items) {
      if (!isPartLine(item)) continue;
      const numbers = this.readNumbers(item, reading);
      if (item.attitude === undefined || item.material === undefined || numbers === 'wrong') continue;
      for (const part of item.parts) if (names.get(part.name) === part) this.add(part, item, numbers);
    }
    for (const item of cabinet.items) if (isPartLine(item) && item.on) this.stand(item, item.on);
  }

  attitude(id: PartId): Attitude | undefined {
    return this.attitudes.get(id);
  }

  /** All the parts that a name stands for; undefined if there are none, which has been reported. */
  all(ref: PartRef | undefined): readonly PartId[] | undefined {
    const ids = this.find(ref);
    const part = ref?.part?.ref;
    const kind = part && this.kinds.get(part);
    if (ids === undefined && ref && kind) this.report(this.numberless(ref, part, kind));
    return ids;
  }

  /** The same for several names, without a word about those that stand for none. */
  known(refs: readonly PartRef[]): readonly PartId[] {
    return refs.flatMap((ref) => this.find(ref) ?? []);
  }

  /** The parts that several names stand for, without those that stand for none. */
  each(refs: readonly PartRef[]): readonly PartId[] {
    return [...new Set(refs.flatMap((ref) => this.all(ref) ?? []))];
  }

  /** The one part that is meant; several are reported. */
  one(ref: PartRef | undefined): PartId | undefined {
    const ids = this.all(ref);
    if (!ref || !ids || ids.length === 0) return undefined;
    if (ids.length === 1) return ids[0];
    this.report(
      onePartWanted({
        source: this.places.of(ref),
        message: say`${wordsOfRef(ref)} stands for ${ids.length} parts, and one of them is meant here`,
        cure: say`Write its number as well, as in ${ids[0] ?? ''}.`,
        data: { candidates: ids },
      }),
    );
    return undefined;
  }

  private find(ref: PartRef | undefined): readonly PartId[] | undefined {
    const part = ref?.part?.ref;
    const kind = part && this.kinds.get(part);
    if (!kind || ref?.index === undefined) return kind?.ids;
    const number = /^\d+$/.test(ref.index) ? Number(ref.index) : Number.NaN;
    const id = kind.first === undefined ? undefined : kind.ids[number - kind.first];
    return id === undefined ? undefined : [id];
  }

  private add(part: Part, line: PartLine, numbers: readonly [number, number] | undefined): void {
    const { name } = part;
    const [from, to] = numbers ?? [0, 0];
    const ids: PartId[] = [];
    for (let number = from; number <= to; number++) {
      const id = numbers ? `${name} ${number}` : name;
      ids.push(id);
      this.attitudes.set(id, line.attitude);
      this.specs.push({
        id,
        kind: name,
        index: numbers ? number : undefined,
        attitude: line.attitude,
        material: line.material.$refText,
        grain: line.grain,
        source: this.places.of(part),
      });
    }
    this.kinds.set(part, { ids, first: numbers ? from : undefined });
  }

  /** A part on a cant: the part that has it may be declared below. */
  private stand(line: PartLine, on: Plane): void {
    const level = this.one(on.ref);
    if (level === undefined) return;
    const own = new Set(line.parts.flatMap((part) => this.kinds.get(part)?.ids ?? []));
    const place = { part: level, source: this.places.of(on) };
    this.specs.forEach((spec, i) => {
      if (own.has(spec.id)) this.specs[i] = { ...spec, on: place };
    });
  }

  private readNumbers(line: PartLine, reading: Reading): readonly [number, number] | undefined | 'wrong' {
    if (!line.from || !line.to) return undefined;
    const from = evaluateCount(line.from, reading);
    const to = evaluateCount(line.to, reading);
    if (from === undefined || to === undefined) return 'wrong';
    if (to - from < MOST && to >= from - 1) return [from, to];
    const many = to >= from;
    const source = { ...this.places.of(line.from), end: this.places.of(line.to).end };
    const message = many
      ? say`${from} to ${to} makes ${to - from + 1} parts, and a cabinet has at most ${MOST} of a name`
      : say`${from} to ${to} runs backwards`;
    this.report(notWhole({ source, message, cure: say`Write the first number, then the last.` }));
    return 'wrong';
  }

  private numberless(ref: PartRef, part: Part, kind: Kind): Finding {
    const related = [{ message: say`declared here`, source: this.places.of(part) }];
    const source = this.places.of(ref);
    if (kind.first === undefined) {
      const message = say`${part.name} is one part and has no number ${ref.index ?? ''}`;
      const cure = say`Write ${part.name} alone, or declare it with numbers.`;
      return noSuchPart({ source, related, message, cure, data: { candidates: [part.name] } });
    }
    const last = kind.first + kind.ids.length - 1;
    const has = kind.ids.length === 0 ? 'none' : kind.first === last ? `${last} only` : `${kind.first} to ${last}`;
    const message = say`there is no ${wordsOfRef(ref)}: ${part.name} has the numbers ${has}`;
    const cure = say`Write a number it has, or declare more of them.`;
    return noSuchPart({ source, related, message, cure, data: { candidates: kind.ids } });
  }
}
