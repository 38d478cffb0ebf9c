import { type Finding, list, type Related, say, type Text } from '@dryfit/engine';
import { type AstNode, AstUtils, type LangiumDocument, type LinkingError } from 'langium';
import { lacksImports } from '../checks/missing-import.js';
import { unknownName } from '../checks/unknown-name.js';
import { isArgument, isCabinet, isFile, isJobLine, isPartRef, isPartsOf, type JobLine } from '../generated/ast.js';
import { cabinetOfPart } from '../interpret/order.js';
import { Places } from '../interpret/source.js';
import { libraryHolding } from '../library/library.js';
import type { JoineryServices } from '../services.js';
import { nearest } from './nearest.js';

const NOUN: Readonly<Record<string, string>> = {
  Part: 'part',
  Parameter: 'parameter',
  Material: 'material',
  Band: 'band',
  Machine: 'machine',
  Connector: 'connector',
  Pattern: 'pattern',
  Cabinet: 'cabinet',
};

/** Names that stand for nothing. Where an import failed, that explains what the shop lacks. */
export function unknownNames(document: LangiumDocument, services: JoineryServices): readonly Finding[] {
  const root = document.parseResult.value;
  if (!isFile(root) || !document.references.some(({ error }) => error)) return [];
  const importsMissing = lacksImports(document, services);
  const places = new Places(root);
  const found: Finding[] = [];
  /** Where the same name stands again, by what it should name. */
  const again = new Map<string, Related[]>();
  for (const { error, $refNode, $refText } of document.references) {
    if (!error) continue;
    const type = services.shared.AstReflection.getReferenceType(error.info);
    const inside = isInside(type);
    if ((importsMissing && !inside) || isOfUnknownCabinet(error)) continue;
    const source = places.at($refNode ?? error.info.container.$cstNode);
    // The same name in the same cabinet is one mistake; the other places go with the first.
    const key = `${type} ${$refText} ${inside ? (placeOf(error.info.container)?.name ?? '') : ''}`;
    const before = again.get(key);
    if (before) {
      before.push({ message: say`here too`, source });
      continue;
    }
    const related: Related[] = [];
    again.set(key, related);
    const candidates = services.references.ScopeProvider.getScope(error.info).getAllElements();
    const names = candidates.map((candidate) => candidate.name).toArray();
    found.push(unknownName({ source, ...wordsFor(type, $refText, names, error.info.container), related }));
  }
  return found;
}

/** Whether things of this type are declared inside cabinets. */
const isInside = (type: string): boolean => type === 'Part' || type === 'Parameter';

function wordsFor(
  type: string,
  name: string,
  names: readonly string[],
  container: AstNode,
): { message: Text; cure: Text; data?: Finding['data'] } {
  const noun = NOUN[type] ?? 'thing';
  const meant = nearest(name, names);
  const message = say`there is no ${noun} called ${name} ${whereOf(type, container)}`;
  const wanted = { type, name };
  if (meant !== undefined) return { message, cure: say`Did you mean ${meant}?`, data: { ...wanted, instead: meant } };
  const library = libraryHolding(type, name);
  if (library !== undefined) {
    const path = `dryfit:${library}`;
    return {
      message,
      cure: say`It is in the built-in library: write import "${path}".`,
      data: { ...wanted, import: path },
    };
  }
  if (
    type === 'Parameter' &&
    !isArgument(container) &&
    AstUtils.getContainerOfType(container, isCabinet) === undefined
  ) {
    const why = jobLineOf(container) ? 'A job gives figures' : 'A shop is described by figures';
    return { message, cure: say`${why}: write the length itself.`, data: wanted };
  }
  const known = names.length === 0 || names.length > 12 ? [] : say` There is ${list([...names].sort(), ' or ')}.`;
  return {
    message,
    cure: [...say`Define it, ${isInside(type) ? '' : 'import the file that has it, '}or write another name.`, ...known],
    data: wanted,
  };
}

function whereOf(type: string, container: AstNode): string {
  if (!isInside(type)) return 'in this file or in what it imports';
  const cabinet = placeOf(container) ?? jobLineOf(container)?.cabinet?.ref;
  return cabinet?.name === undefined ? 'here' : `in ${cabinet.name}`;
}

const jobLineOf = (node: AstNode): JobLine | undefined => AstUtils.getContainerOfType(node, isJobLine);

/** The cabinet that a name is looked up in: the one it stands in, or the one that a job says a part is of. */
const placeOf = (node: AstNode) =>
  isPartRef(node) ? cabinetOfPart(node) : AstUtils.getContainerOfType(node, isCabinet);

/** A parameter or a part of a cabinet that is itself unknown: one mistake, not two. */
function isOfUnknownCabinet({ info }: LinkingError): boolean {
  const named = AstUtils.getContainerOfType(info.container, isPartsOf);
  if (named && info.property === 'part') return named.cabinet?.ref === undefined;
  const line = jobLineOf(info.container);
  return info.property === 'parameter' && line !== undefined && line.cabinet?.ref === undefined;
}
