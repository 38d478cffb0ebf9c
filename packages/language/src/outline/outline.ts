import type { AstNode } from 'langium';
import {
  type Cabinet,
  type CabinetItem,
  type Entry,
  type File,
  isCabinet,
  isJob,
  type JobLine,
  type JobOrder,
  type Part,
  type PartLine,
} from '../generated/ast.js';
import { idOfCorner } from '../interpret/corners.js';
import { idOfJoint } from '../interpret/joint.js';
import { partsIn } from '../interpret/order.js';
import { textOf } from '../interpret/source.js';
import { wordsOfRefs } from '../interpret/words.js';
import type { Stretch } from '../tree/leaves.js';
import { nameStretch } from '../tree/names.js';

/** A thing of a file, with what it holds, in the order of the text. */
export interface OutlineItem extends Stretch {
  readonly kind: OutlineKind;
  /** Never empty: what has no name yet is called by what it is. */
  readonly name: string;
  readonly detail: string;
  /** The word it is known by; lies within the whole. */
  readonly named: Stretch;
  readonly children: readonly OutlineItem[];
}

export type OutlineKind =
  | Entry['$type']
  | 'Parameter'
  | 'Part'
  | 'Joint'
  | 'Notch'
  | 'Cant'
  | 'JobLine'
  | 'LateLine'
  | 'MillLine';

/** Cabinets with parameters, parts, notches, cants and joints; jobs with their lines; stock, pose and limits. */
export function outlineOf(file: File): OutlineItem[] {
  return file.entries.map((entry) =>
    itemOf(entry, entry.$type, nameOfEntry(entry), detailOf(entry), childrenOf(entry)),
  );
}

function nameOfEntry(entry: Entry): string {
  return 'name' in entry ? entry.name : entry.$type.toLowerCase();
}

function detailOf(entry: Entry): string {
  if (entry.$type === 'Connector') return entry.shape === 'loosetenon' ? 'loose tenon' : (entry.shape ?? '');
  return entry.$type.toLowerCase();
}

function childrenOf(entry: Entry): OutlineItem[] {
  if (isCabinet(entry)) return entry.items.flatMap((item) => itemsOf(item, entry));
  return isJob(entry) ? inTextOrder([...entry.lines.map(ofLine), ...entry.orders.map(ofOrder)]) : [];
}

function itemsOf(item: CabinetItem, _of: Cabinet): OutlineItem[] {
  switch (item.$type) {
    case 'Parameter':
      return [itemOf(item, 'Parameter', item.name, item.value ? textOf(item.value) : '', [])];
    case 'PartLine':
      return item.parts.map((part) => ofPart(part, item));
    case 'Joint':
      return [itemOf(item, 'Joint', idOfJoint(item), factsOf(item.facts.length), [])];
    case 'NotchLine':
      return [itemOf(item, 'Notch', idOfCorner(item), '', [])];
    case 'CantLine':
      return [itemOf(item, 'Cant', idOfCorner(item), '', [])];
    default:
      return [];
  }
}

const factsOf = (count: number): string => (count === 0 ? '' : `${count} fact${count === 1 ? '' : 's'}`);

function ofPart(part: Part, line: PartLine): OutlineItem {
  const numbers = line.from && line.to ? `${textOf(line.from)} to ${textOf(line.to)}, ` : '';
  const detail = `${numbers}${line.attitude ?? ''} of ${line.material?.$refText ?? '…'}`;
  // A line that declares one part is that part's; of several, each has its name only.
  return itemOf(line.parts.length === 1 ? line : part, 'Part', part.name, detail, [], part);
}

function ofLine(line: JobLine): OutlineItem {
  const given = line.arguments.map((argument) => textOf(argument)).join(', ');
  return itemOf(line, 'JobLine', `${line.count ?? '…'} of ${line.cabinet?.$refText ?? '…'}`, given, []);
}

function ofOrder(order: JobOrder): OutlineItem {
  const [first, next] = partsIn(order).map(({ parts, cabinet }) => ({
    parts: wordsOfRefs(parts),
    of: `of ${cabinet?.$refText ?? '…'}`,
  }));
  if (order.$type === 'LateLine') return itemOf(order, 'LateLine', `late ${first?.parts ?? '…'}`, first?.of ?? '', []);
  const name = `mill ${first?.parts ?? '…'} before ${next?.parts ?? '…'}`;
  return itemOf(order, 'MillLine', name, [...new Set([first?.of, next?.of])].filter(Boolean).join(', '), []);
}

const inTextOrder = (items: OutlineItem[]): OutlineItem[] => items.sort((a, b) => a.start - b.start);

function itemOf(
  node: AstNode,
  kind: OutlineKind,
  name: string | undefined,
  detail: string,
  children: readonly OutlineItem[],
  namedBy = node,
): OutlineItem {
  const { offset: start = 0, end = 0 } = node.$cstNode ?? {};
  const own = nameStretch(namedBy) ?? { start, end };
  const named = own.start >= start && own.end <= end ? own : { start, end };
  return { kind, name: name?.trim() || kind.toLowerCase(), detail, start, end, named, children };
}
