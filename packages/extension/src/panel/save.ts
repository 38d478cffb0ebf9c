import { Uri, window, workspace } from 'vscode';
import { nameOf } from './reveal.js';

/** Asks where a drawing is to go and writes it there. */
export async function saveDrawing(file: Uri, name: string, svg: string): Promise<void> {
  const plain = name.replace(/[^\p{L}\p{N} ._()-]+/gu, ' ').trim() || nameOf(file);
  const target = await window.showSaveDialog({
    title: 'Save Drawing as SVG',
    defaultUri: Uri.joinPath(file, '..', `${plain}.svg`),
    filters: { 'SVG drawing': ['svg'] },
  });
  if (target === undefined) return;
  try {
    await workspace.fs.writeFile(target, new TextEncoder().encode(svg));
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    void window.showErrorMessage(`The drawing was not saved to ${nameOf(target)}: ${reason}`);
  }
}
