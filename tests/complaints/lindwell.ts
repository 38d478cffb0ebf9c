import { readFileSync } from 'node:fs';
import { Editor, type EditorOptions, Folder } from '../support/server.js';

export const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.joinery`, import.meta.url), 'utf8');

export const SHOP = example('shop');
export const BASES = example('periodicals');
/** The same bases with a first line too near the rear of their shelf. */
export const TOO_NEAR = BASES.replace('by deep5', 'by lines 60, 180, 270');
/** Breaks a cabinet by nothing but the shop it draws on. */
export const SHOP_TOO_NEAR = SHOP.replace('lines 70, 180, 270, 420, 500', 'lines 20, 180, 270, 420, 500');

const started: Editor[] = [];

/** An editor with the library's folder open. */
export async function lindwell(texts: Readonly<Record<string, string>>, options?: EditorOptions): Promise<Editor> {
  const editor = await Editor.start(new Folder(texts), options);
  started.push(editor);
  return editor;
}

export async function stopAll(): Promise<void> {
  for (const editor of started.splice(0)) await editor.stop();
}

export const none = (codes: readonly string[]): boolean => codes.length === 0;
export const some = (codes: readonly string[]): boolean => codes.length > 0;
