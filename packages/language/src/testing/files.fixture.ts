import { type Finding, render } from '@dryfit/engine';
import { EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import { type Examination, examine } from '../findings/examine.js';
import type { File } from '../generated/ast.js';
import { createJoineryServices } from '../module.js';

/** Texts in memory, by their path from the folder `/lindwell`. */
export class FilesInMemory {
  readonly services;
  private readonly texts = new Map<string, string>();

  constructor(texts: Readonly<Record<string, string>>) {
    for (const [path, text] of Object.entries(texts)) this.texts.set(path, text);
    const none = EmptyFileSystem.fileSystemProvider();
    this.services = createJoineryServices({
      fileSystemProvider: () =>
        Object.assign(none, {
          readFile: (uri: URI) => {
            const text = this.texts.get(uri.path.replace('/lindwell/', ''));
            return text === undefined ? Promise.reject(new Error(`no ${uri}`)) : Promise.resolve(text);
          },
          stat: (uri: URI) => Promise.resolve({ uri, isFile: true, isDirectory: false }),
        }),
    });
  }

  async open(path: string): Promise<LangiumDocument<File>> {
    const { LangiumDocuments, DocumentBuilder } = this.services.shared.workspace;
    const document = await LangiumDocuments.getOrCreateDocument(uriOf(path));
    await DocumentBuilder.build([document], { validation: true });
    return document as LangiumDocument<File>;
  }

  /** Puts another text in the place of one, and builds what depends on it. */
  async write(path: string, text: string | undefined): Promise<void> {
    const { DocumentBuilder } = this.services.shared.workspace;
    if (text === undefined) this.texts.delete(path);
    else this.texts.set(path, text);
    await DocumentBuilder.update(text === undefined ? [] : [uriOf(path)], text === undefined ? [uriOf(path)] : []);
  }

  document(path: string): LangiumDocument<File> | undefined {
    return this.services.shared.workspace.LangiumDocuments.getDocument(uriOf(path)) as
      | LangiumDocument<File>
      | undefined;
  }

  /** What is to be said of a file as it has been built last. */
  found(path: string): readonly Finding[] {
    const document = this.document(path);
    return document ? examine(document, this.services.joinery).findings : [];
  }

  async examine(path: string): Promise<Examination> {
    return examine(await this.open(path), this.services.joinery);
  }
}

export const uriOf = (path: string): URI => URI.parse(`memory:/lindwell/${path}`);

/** One text that stands alone. */
export const examineText = (text: string): Promise<Examination> =>
  new FilesInMemory({ 'desk.joinery': text }).examine('desk.joinery');

/** A finding with the text it points at: "unknown-name `lhs`: there is no part called lhs in Desk". */
export const told = (findings: readonly Finding[], text: string): readonly string[] =>
  findings.map(
    ({ code, source, message }) =>
      `${code} \`${text.slice(source.start, source.end)}\`: ${render(message, { units: 'mm' })}`,
  );

/** What is told of a text, of certain checks if any are named. */
export async function tell(text: string, ...codes: readonly string[]): Promise<readonly string[]> {
  const { findings } = await examineText(text);
  return told(
    findings.filter(({ code }) => codes.length === 0 || codes.includes(code)),
    text,
  );
}
