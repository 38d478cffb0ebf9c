import { applied, type Change, createJoineryServices, type Examination, examine, Trial } from '@dryfit/language';
import { EmptyFileSystem, type LangiumDocument, URI } from 'langium';
import { examples } from '../../support/examples.js';
import type { Files } from '../../support/read.js';

/** The name of the text that is looked at; it imports the others. */
export const TEXT = 'text.joinery';

const STOCK: Files = Object.fromEntries(
  examples()
    .filter(({ name }) => ['shop.joinery', 'bench.joinery'].includes(name))
    .map(({ name, text }) => [name, text]),
);

/** A folder of files in memory, and the language over them. One text at a time lies on it. */
export class Bench {
  readonly services = createJoineryServices({
    fileSystemProvider: () =>
      Object.assign(EmptyFileSystem.fileSystemProvider(), {
        readFile: async (uri: URI) => {
          const text = this.texts[uri.path.slice(1)];
          if (text === undefined) throw new Error(`there is no ${uri}`);
          return text;
        },
      }),
  });
  readonly trial = new Trial(this.services.joinery);
  private texts: Files = {};

  /** Puts files on the bench in the place of those that lie there, beside the examples' shop. */
  async lay(files: Files): Promise<{ readonly document: LangiumDocument; readonly examination: Examination }> {
    const { LangiumDocuments, DocumentBuilder } = this.services.shared.workspace;
    const next = { ...STOCK, ...files };
    const known = LangiumDocuments.all.map(({ uri }) => uri).toArray();
    const changed = known.filter(
      (uri) => uri.scheme === 'memory' && next[uri.path.slice(1)] !== this.texts[uri.path.slice(1)],
    );
    this.texts = next;
    const gone = changed.filter((uri) => next[uri.path.slice(1)] === undefined);
    await DocumentBuilder.update(
      changed.filter((uri) => !gone.includes(uri)),
      gone,
    );
    // The files of a folder are known, whether or not something imports them.
    const stock: LangiumDocument[] = [];
    for (const name of Object.keys(next).filter((one) => one !== TEXT))
      stock.push(await LangiumDocuments.getOrCreateDocument(uriOf(name)));
    const document = await LangiumDocuments.getOrCreateDocument(uriOf(TEXT));
    await DocumentBuilder.build([...stock, document], { validation: false });
    return { document, examination: examine(document, this.services.joinery) };
  }

  /** The same, and nothing is known from before: each file is read whole, and every cabinet worked out. */
  async layAnew(files: Files): Promise<Examination> {
    const { LangiumDocuments, DocumentBuilder } = this.services.shared.workspace;
    const known = LangiumDocuments.all.map(({ uri }) => uri).filter(({ scheme }) => scheme === 'memory');
    await DocumentBuilder.update([], known.toArray());
    return (await this.lay(files)).examination;
  }

  /** The files with a change made. */
  changed({ edits, newFiles = [] }: Change): Files {
    return Object.fromEntries([
      ...Object.entries(this.texts).map(([name, text]) => [name, applied(text, uriOf(name).toString(), edits)]),
      ...newFiles.map(({ uri, text }) => [URI.parse(uri).path.slice(1), text]),
    ]);
  }
}

const uriOf = (name: string): URI => URI.parse(`memory:/${name}`);
