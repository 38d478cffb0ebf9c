import { type Finding, type FitResult, fit, type Spec } from '@dryfit/engine';
import {
  type AstNode,
  AstUtils,
  CstUtils,
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  inject,
  type LangiumDocument,
  URI,
} from 'langium';
import { NodeFileSystem } from 'langium/node';
import { examine } from '../findings/examine.js';
import { Fits } from '../fits/fits.js';
import { isArgument, isCabinet, isEntry, isFile, isJob, isJobLine, isMeasure } from '../generated/ast.js';
import { JoineryGeneratedModule, JoineryGeneratedSharedModule } from '../generated/module.js';
import { JoineryModule, JoinerySharedModule } from '../module.js';
import { remember } from '../remember.js';
import type { JoineryServices } from '../services.js';

const results = new Map<string, FitResult>();

/** Most deletions cost one statement and leave the same cabinet: each is worked out once. */
const workedOutOnce = (spec: Spec): FitResult =>
  remember(
    results,
    JSON.stringify(spec, (_, value) => (value instanceof Map ? [...value] : value)),
    () => fit(spec),
  );

const shared = inject(createDefaultSharedCoreModule(NodeFileSystem), JoineryGeneratedSharedModule, JoinerySharedModule);
const joinery: JoineryServices = inject(createDefaultCoreModule({ shared }), JoineryGeneratedModule, JoineryModule, {
  joinery: {
    Fits: (services: JoineryServices) => new Fits(services.joinery.Files, services.joinery.Shops, workedOutOnce),
  },
});
shared.ServiceRegistry.register(joinery);
const { LangiumDocumentFactory, LangiumDocuments, DocumentBuilder } = shared.workspace;

/** A text examined as if it stood in a folder, then forgotten. */
export async function examined<T>(text: string, folder: URL, use: (document: LangiumDocument) => T): Promise<T> {
  const uri = URI.parse(new URL('deletions.joinery', folder).href);
  const document = LangiumDocumentFactory.fromString(text, uri);
  LangiumDocuments.addDocument(document);
  await DocumentBuilder.build([document]);
  const result = use(document);
  LangiumDocuments.deleteDocument(uri);
  return result;
}

/**
 * What is found in a text, each finding as one line that does not depend on figures; with what is kept back while a
 * line cannot be read, since it is found all the same.
 */
export const findingsOf = (text: string, folder: URL): Promise<ReadonlySet<string>> =>
  examined(text, folder, (document) => new Set(examine(document, joinery, { followOns: true }).findings.map(lineOf)));

function lineOf({ code, source, about }: Finding): string {
  return [code, source.start, source.end, about.joint ?? '', (about.slots ?? []).join(' ')].join(' | ');
}

/** One token taken out of a text, and the same text without the whole statement that the token is part of. */
export interface Deletion {
  readonly token: string;
  readonly line: number;
  readonly text: string;
  readonly withoutStatement: string;
}

/** Every one-token deletion; blanks take the token's place, so that nothing else moves. */
export function deletionsOf(text: string, folder: URL): Promise<readonly Deletion[]> {
  return examined(text, folder, (document) => {
    const root = document.parseResult.value.$cstNode;
    if (!root) return [];
    const leaves = CstUtils.flattenCst(root).filter((leaf) => !leaf.hidden);
    return leaves
      .map((leaf) => {
        const statement = statementOf(leaf.astNode).$cstNode ?? leaf;
        return {
          token: leaf.text,
          line: leaf.range.start.line + 1,
          text: blanked(text, leaf.offset, leaf.end),
          withoutStatement: blanked(text, statement.offset, statement.end),
        };
      })
      .toArray();
  });
}

/** The fact, setting, statement or entry that a node is part of: what loses its meaning with one of its tokens. */
function statementOf(node: AstNode): AstNode {
  const around = node.$container;
  if (around === undefined || isFile(around)) return node;
  if (isCabinet(around) || isJob(around) || isEntry(around)) return isMeasure(node) ? around : node;
  if (around.$type === 'Joint' && around.$cstNode && isFactOf(around, node)) return node;
  return isJobLine(node) || isArgument(node)
    ? (AstUtils.getContainerOfType(node, isJobLine) ?? node)
    : statementOf(around);
}

const isFactOf = (joint: AstNode, node: AstNode): boolean =>
  'facts' in joint && Array.isArray(joint.facts) && joint.facts.includes(node);

function blanked(text: string, start: number, end: number): string {
  return text.slice(0, start) + text.slice(start, end).replace(/[^\r\n]/g, ' ') + text.slice(end);
}
