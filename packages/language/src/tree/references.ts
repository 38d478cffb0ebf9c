import type { AstNode, Reference, ReferenceInfo } from 'langium';

/** Calls back for every name in a tree that stands for something else, in the order of the text. */
export function forEachReference(node: AstNode, found: (info: ReferenceInfo) => void): void {
  for (const property in node) {
    if (property.startsWith('$')) continue;
    const value = (node as unknown as Record<string, unknown>)[property];
    if (Array.isArray(value)) {
      for (let index = 0; index < value.length; index++) visit(value[index], node, property, found, index);
    } else visit(value, node, property, found);
  }
}

function visit(
  value: unknown,
  container: AstNode,
  property: string,
  found: (info: ReferenceInfo) => void,
  index?: number,
): void {
  if (typeof value !== 'object' || value === null) return;
  if ('$refText' in value) found({ reference: value as Reference, container, property, index });
  else if ('$type' in value) forEachReference(value as AstNode, found);
}
