import { readdirSync, readFileSync } from 'node:fs';
import { AstUtils, type CstNode, GrammarAST, isCompositeCstNode, isLeafCstNode, type LeafCstNode, URI } from 'langium';
import { NodeFileSystem } from 'langium/node';
import { describe, expect, it } from 'vitest';
import { createJoineryServerServices } from './services.js';

const folder = new URL('../../../../examples/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.joinery'));

/** Opens a text beside the examples and gives its leaves and what is offered at an offset. */
async function open(text: string) {
  const { shared, joinery } = createJoineryServerServices(NodeFileSystem);
  await shared.workspace.WorkspaceManager.initializeWorkspace([]);
  const uri = URI.parse(new URL('completed.joinery', folder).href);
  const document = shared.workspace.LangiumDocumentFactory.fromString(text, uri);
  shared.workspace.LangiumDocuments.addDocument(document);
  await shared.workspace.DocumentBuilder.build([document]);
  const offered = async (offset: number): Promise<string[]> => {
    const position = document.textDocument.positionAt(offset);
    const list = await joinery.lsp.CompletionProvider?.getCompletion(document, {
      textDocument: { uri: `${uri}` },
      position,
    });
    return list?.items.map(({ label }) => label) ?? [];
  };
  return { leaves: leavesOf(document.parseResult.value.$cstNode), offered };
}

function leavesOf(node: CstNode | undefined): LeafCstNode[] {
  if (isCompositeCstNode(node)) return node.content.flatMap(leavesOf);
  return isLeafCstNode(node) && !node.hidden ? [node] : [];
}

/** What is offered at `|` in a text. */
async function offeredIn(text: string): Promise<string[]> {
  return (await open(text.replace('|', ''))).offered(text.indexOf('|'));
}

/** A word of the language or a name that is used, not one that is given, nor a number or text. */
function isOffered(leaf: LeafCstNode): boolean {
  if (!/^[a-z]/i.test(leaf.text)) return false;
  const source = leaf.grammarSource;
  return GrammarAST.isKeyword(source) || AstUtils.getContainerOfType(source, GrammarAST.isCrossReference) !== undefined;
}

describe('completion', { timeout: 60_000 }, () => {
  it.each(names)('offers each word of %s where it stands, at each place of the grammar once', async (name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    const { leaves, offered } = await open(text);
    const seen = new Set<unknown>();
    const missing: string[] = [];
    for (const [index, leaf] of leaves.entries()) {
      const place = `${grammarPlace(leaves[index - 1])} ${grammarPlace(leaf)}`;
      if (seen.has(place) || !isOffered(leaf)) continue;
      seen.add(place);
      if (!(await offered(leaf.offset)).includes(leaf.text)) missing.push(`${leaf.text} at ${leaf.offset}`);
    }
    expect(missing).toEqual([]);
    expect(seen.size).toBeGreaterThan(20);
  });

  it('offers what fits at the end of a text that is being typed', async () => {
    const head =
      'units mm\nimport "shop.joinery"\ncabinet A {\n  part lh, rh : upright of birch18\n  part shelf : level of birch18\n';
    expect(await offeredIn(`${head}  connect |`)).toEqual(expect.arrayContaining(['none', 'biscuit20', 'tenon8']));
    expect(await offeredIn(`${head}  butt |`)).toEqual(['lh', 'rh', 'shelf']);
    expect(await offeredIn(`${head}  butt shelf between lh and |`)).toEqual(['lh', 'rh', 'shelf']);
    expect(await offeredIn(`${head}  butt shelf between lh and rh {\n    bottom |`)).toEqual(
      expect.arrayContaining(['flush', 'set', 'proud', 'against']),
    );
    expect(await offeredIn(`${head}  butt shelf between lh and rh { flush top  datum |`)).toEqual(
      expect.arrayContaining(['front', 'rear', 'lh']),
    );
    expect(await offeredIn(`${head}  lh.|`)).toEqual(expect.arrayContaining(['left', 'top']));
    expect(await offeredIn(`${head}  part x : |`)).toEqual(['upright', 'level', 'facing']);
    expect(await offeredIn('|')).toEqual(expect.arrayContaining(['units', 'import', 'cabinet', 'job', 'material']));
    expect(await offeredIn('connector c : |')).toEqual(expect.arrayContaining(['biscuit', 'loose', 'dowel']));
    expect(await offeredIn('connector c : dowel { plunge 10 in |')).toEqual(expect.arrayContaining(['face', 'edge']));
  });

  it('is not led astray by what is broken elsewhere', async () => {
    const broken = 'cabinet B {\n part q : \n butt between\n width width width\n';
    const text = `${broken}}\ncabinet A {\n  part lh, rh : upright of birch18\n  butt lh between { flush\n }\n  butt lh to |\n}\n`;
    expect(await offeredIn(text)).toEqual(['lh', 'rh']);
  });

  it('offers nothing for a name that is given', async () => {
    expect(await offeredIn('cabinet |')).toEqual([]);
    expect(await offeredIn('cabinet A {\n  part |')).toEqual([]);
  });

  it('offers the checks that can be allowed', async () => {
    expect(await offeredIn('cabinet A {\n  allow |\n}\n')).toEqual(
      expect.arrayContaining(['slot-near-edge', 'never-used']),
    );
    expect(await offeredIn('cabinet A {\n  allow slot-n|\n}\n')).toContain('slot-near-edge');
  });
});

const sources = new Map<unknown, number>();

/** The same for all leaves that one element of the grammar made. */
function grammarPlace(leaf: LeafCstNode | undefined): number {
  const source = leaf?.grammarSource;
  if (!sources.has(source)) sources.set(source, sources.size);
  return sources.get(source) ?? -1;
}
