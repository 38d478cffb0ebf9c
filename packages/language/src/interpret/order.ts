import type { PartsOf, Source, WorkOrder } from '@dryfit/engine';
import { AstUtils } from 'langium';
import {
  type Cabinet,
  isCabinet,
  isPartsOf,
  type JobOrder,
  type PartRef,
  type PartsOf as PartsOfNode,
} from '../generated/ast.js';

/** The cabinet in which the name of a part is looked up: the one it stands in, or the one that a job says it is of. */
export function cabinetOfPart(ref: PartRef): Cabinet | undefined {
  const named = AstUtils.getContainerOfType(ref, isPartsOf);
  return named ? named.cabinet?.ref : AstUtils.getContainerOfType(ref, isCabinet);
}

/** What an order of a job asks for; undefined where the text lacks a part or names a cabinet that there is not. */
export function readOrder(order: JobOrder, source: Source): WorkOrder | undefined {
  if (order.$type === 'LateLine') {
    const parts = readParts(order.parts);
    return parts && { kind: 'late', parts, source };
  }
  const [first, next] = [readParts(order.first), readParts(order.next)];
  return first && next && { kind: 'before', first, next, source };
}

function readParts(node: PartsOfNode | undefined): PartsOf | undefined {
  const cabinet = node?.cabinet?.ref?.name;
  if (node === undefined || cabinet === undefined) return undefined;
  const parts = node.parts.flatMap(({ part, index }) => {
    const name = part?.ref?.name;
    return name === undefined ? [] : [index === undefined ? { name } : { name, index: Number(index) }];
  });
  return parts.length === 0 ? undefined : { cabinet, parts };
}

/** The names of parts that an order holds, with the cabinet that each is of. */
export const partsIn = (order: JobOrder): readonly PartsOfNode[] =>
  (order.$type === 'LateLine' ? [order.parts] : [order.first, order.next]).filter((one) => one !== undefined);
