import {
  type AstNode,
  type AstNodeDescription,
  type AstNodeDescriptionProvider,
  type AstReflection,
  AstUtils,
  EMPTY_SCOPE,
  type ReferenceInfo,
  type Scope,
  type ScopeProvider,
  type Stream,
  stream,
} from 'langium';
import { Argument, isArgument, isCabinet, isFile, isPartRef, Parameter, Part } from '../generated/ast.js';
import { cabinetOfPart } from '../interpret/order.js';
import { remember } from '../remember.js';
import type { JoineryServices } from '../services.js';
import type { Files } from './files.js';
import { type Named, type Names, namesOfCabinet } from './names.js';

/**
 * What a name may stand for: parts and parameters of the cabinet it stands in, entries of the file and of what the
 * file imports. Every lookup is one in a map; descriptions are made when they are asked for.
 */
export class JoineryScopeProvider implements ScopeProvider {
  private readonly files: () => Files;
  private readonly reflection: AstReflection;
  private readonly descriptions: AstNodeDescriptionProvider;
  /** By the tree that things are in: places in it may have moved from one tree of a document to the next. */
  private readonly described = new WeakMap<AstNode, Map<AstNode, AstNodeDescription>>();

  constructor(services: JoineryServices) {
    this.files = () => services.joinery.Files;
    this.reflection = services.shared.AstReflection;
    this.descriptions = services.workspace.AstNodeDescriptionProvider;
  }

  getScope(context: ReferenceInfo): Scope {
    const type = this.reflection.getReferenceType(context);
    if (type === Part.$type || type === Parameter.$type) {
      const cabinet = isArgument(context.container)
        ? context.property === Argument.parameter
          ? context.container.$container?.cabinet?.ref
          : undefined
        : isPartRef(context.container)
          ? cabinetOfPart(context.container)
          : AstUtils.getContainerOfType(context.container, isCabinet);
      if (!cabinet) return EMPTY_SCOPE;
      const names = namesOfCabinet(cabinet);
      return this.scopeOf(type === Part.$type ? names.parts : names.parameters);
    }
    const file = AstUtils.findRootNode(context.container);
    if (!isFile(file)) return EMPTY_SCOPE;
    const files = this.files();
    return this.scope(
      (name) => files.find(file, type, name),
      () => files.all(file, type).values(),
    );
  }

  private scopeOf(names: Names): Scope {
    return this.scope(
      (name) => names.get(name),
      () => names.values(),
    );
  }

  private scope(find: (name: string) => Named | undefined, all: () => Iterable<Named>): Scope {
    const describe = (node: Named) => this.describe(node);
    const getElement = (name: string): AstNodeDescription | undefined => {
      const node = find(name);
      return node && describe(node);
    };
    return {
      getElement,
      getElements: (name) => stream([getElement(name)].filter((found) => found !== undefined)),
      getAllElements: (): Stream<AstNodeDescription> => stream(all()).map(describe),
    };
  }

  private describe(node: Named): AstNodeDescription {
    const inTree = remember(this.described, AstUtils.findRootNode(node), () => new Map<AstNode, AstNodeDescription>());
    return remember(inTree, node, () => this.descriptions.createDescription(node, node.name));
  }
}
