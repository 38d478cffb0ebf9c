import type { Finding } from '@dryfit/engine';
import {
  applied,
  type Change,
  createJoineryServices,
  type Examination,
  examine,
  type Fix,
  Trial,
} from '@dryfit/language';
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
    for (const name of Object.keys(STOCK)) stock.push(await LangiumDocuments.getOrCreateDocument(uriOf(name)));
    const document = await LangiumDocuments.getOrCreateDocument(uriOf(TEXT));
    await DocumentBuilder.build([...stock, document], { validation: false });
    return { document, examination: examine(document, this.services.joinery) };
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

/** How often each check finds something. */
export function tally(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { code } of findings) counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
}

/** Checks that find more than before, other than those that the fix says may follow. */
export function unlisted(before: readonly Finding[], after: readonly Finding[], fix: Fix): readonly string[] {
  const had = tally(before);
  return [...tally(after)]
    .filter(([code, count]) => count > (had.get(code) ?? 0) && fix.mayFollow?.[code] === undefined)
    .map(([code]) => code);
}
