import { type Finding, type LengthFormat, render, type Source } from '@dryfit/engine';
import {
  type AstNode,
  type Cancellation,
  DefaultDocumentValidator,
  type DiagnosticInfo,
  type LangiumDocument,
  type LangiumDocuments,
  URI,
  type ValidationAcceptor,
} from 'langium';
import { neverUsed } from '../checks/never-used.js';
import type { File, JoineryAstType } from '../generated/ast.js';
import type { JoineryServices } from '../services.js';
import { type Examination, examineWhileTyping } from './examine.js';

/** Leaves to the language's own check what Langium would say of the text in its own words. */
export class JoineryDocumentValidator extends DefaultDocumentValidator {
  protected override processLexingErrors(): void {}
  protected override processParsingErrors(): void {}
  protected override processLinkingErrors(): void {}

  protected override getSource(): string {
    return 'dryfit';
  }
}

/** Every finding about a file, as one check of its root: the editor shows what the command line prints. */
export function registerChecks(services: JoineryServices): void {
  services.validation.ValidationRegistry.register<JoineryAstType>({
    File: async (file: File, accept: ValidationAcceptor, cancelToken: Cancellation.CancellationToken) => {
      const { $document: document } = file;
      if (!document) return;
      const examination = await examineWhileTyping(document, services, cancelToken);
      const { LangiumDocuments: documents } = services.shared.workspace;
      for (const finding of examination.findings) {
        accept(
          finding.severity,
          messageOf(finding, examination),
          infoOf(finding, file, document, documents, examination),
        );
      }
    },
  });
}

/** What is wrong and, on a line of its own, what would cure it. */
function messageOf({ message, cure }: Finding, { units }: Examination): string {
  const format: LengthFormat = { units, unit: units === 'in' };
  return [message, cure].map((text) => render(text, format)).join('\n');
}

function infoOf(
  finding: Finding,
  node: File,
  document: LangiumDocument,
  documents: LangiumDocuments,
  { units }: Examination,
): DiagnosticInfo<AstNode, string> {
  const related = finding.related.flatMap(({ message, source }) => {
    const range = rangeOf(source, documents.getDocument(URI.parse(source.uri)));
    const text = render(message, { units, unit: units === 'in' });
    return range ? [{ message: text, location: { uri: source.uri, range } }] : [];
  });
  return {
    node,
    range: rangeOf(firstLineOf(finding.source, document), document),
    code: finding.code,
    relatedInformation: related,
    data: { code: finding.code, about: finding.about, ...finding.data },
    // What nothing uses is shown faded as well.
    ...(finding.code === neverUsed.code ? { tags: [1] } : {}),
  };
}

/** A statement over several lines is underlined in its first, so that the others stay readable. */
function firstLineOf(source: Source, document: LangiumDocument): Source {
  const [line = ''] = document.textDocument.getText().slice(source.start, source.end).split(/\r?\n/, 1);
  return { ...source, end: source.start + line.length };
}

function rangeOf({ start, end }: Source, document: LangiumDocument | undefined) {
  const text = document?.textDocument;
  return text && { start: text.positionAt(start), end: text.positionAt(end) };
}
