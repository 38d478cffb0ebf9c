import { EmptyFileSystem, type FileSystemNode, URI } from 'langium';
import { describe, expect, test } from 'vitest';
import { examine } from '../findings/examine.js';
import { createJoineryServices } from '../module.js';
import { Unreadable } from './readable.js';

const FOLDER = 'memory:/lindwell';
const uriOf = (path: string) => URI.parse(`${FOLDER}/${path}`);
const CABINET = 'cabinet Rack { part a : upright of ply }';

/** Services over texts in memory; what stands for an error is thrown when it is read. */
function workspace(texts: Readonly<Record<string, string | Error>>) {
  const files = new Map(Object.entries(texts));
  const nodeOf = (path: string): FileSystemNode => ({ uri: uriOf(path), isFile: true, isDirectory: false });
  const services = createJoineryServices({
    fileSystemProvider: () =>
      Object.assign(EmptyFileSystem.fileSystemProvider(), {
        readFile: async (uri: URI) => {
          const text = files.get(uri.path.replace('/lindwell/', '')) ?? new Error('not there');
          if (text instanceof Error) throw text;
          return text;
        },
        readDirectory: async () => [...files.keys()].map(nodeOf),
      }),
  });
  const { WorkspaceManager, LangiumDocuments, DocumentBuilder } = services.shared.workspace;
  return {
    open: () => WorkspaceManager.initializeWorkspace([{ name: 'Lindwell', uri: FOLDER }]),
    read: () =>
      LangiumDocuments.all
        .map(({ uri }) => uri)
        .filter(({ scheme }) => scheme === 'memory')
        .map(({ path }) => path.replace('/lindwell/', ''))
        .toArray()
        .sort(),
    write: (path: string, text: string | Error) => {
      files.set(path, text);
      return DocumentBuilder.update([uriOf(path)], []);
    },
    found: (path: string) => {
      const document = LangiumDocuments.getDocument(uriOf(path));
      const { findings } = document ? examine(document, services.joinery) : { findings: [] };
      return findings
        .filter(({ code }) => code === 'missing-import')
        .map(({ message, cure }) => [...message, ' ', ...cure].join(''));
    },
  };
}

describe('files that cannot be read', () => {
  test('keep no other file of their folder from being read', async () => {
    const { open, read } = workspace({ 'a.joinery': CABINET, 'b.joinery': new Error('denied'), 'c.joinery': CABINET });
    await open();
    expect(read()).toEqual(['a.joinery', 'c.joinery']);
  });

  test('are told with the reason where they are imported, until they can be', async () => {
    const reason = 'it is not UTF-8 text; save it as UTF-8';
    const { open, found, write } = workspace({
      'a.joinery': `import "shop.joinery"\n${CABINET}`,
      'shop.joinery': new Unreadable(reason),
    });
    await open();
    const told = [`shop.joinery cannot be read: ${reason} Mend that file, or import another.`];
    expect(found('a.joinery')).toEqual(told);
    await write('shop.joinery', 'material ply { thickness 18 }');
    expect(found('a.joinery')).toEqual([]);
    await write('shop.joinery', new Unreadable(reason));
    expect(found('a.joinery')).toEqual(told);
  });

  test('are not there where an import names none', async () => {
    const { open, found } = workspace({ 'a.joinery': `import ""\n${CABINET}` });
    await open();
    expect(found('a.joinery')).toEqual([
      'this import names no file Write its path from the folder of this file, as in "shop.joinery".',
    ]);
  });
});
