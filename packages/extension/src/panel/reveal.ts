import type { TextPlace } from '@dryfit/language/protocol';
import { Range, Selection, TabInputText, TextEditorRevealType, Uri, ViewColumn, window, workspace } from 'vscode';

/** Shows a place in its text, in the editor that has it open or else beside the panel. */
export async function reveal(place: TextPlace): Promise<void> {
  const uri = Uri.parse(place.uri);
  const { start, end } = place.range;
  const range = new Range(start.line, start.character, end.line, end.character);
  const document = await workspace.openTextDocument(uri);
  const editor = await window.showTextDocument(document, { viewColumn: columnOf(place.uri), preserveFocus: false });
  editor.selection = new Selection(range.start, range.start);
  editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
}

/** The column where a text is open; else one that shows texts; else the first. */
export function columnOf(uri: string): ViewColumn {
  const groups = window.tabGroups.all;
  const open = groups.find((group) =>
    group.tabs.some((tab) => tab.input instanceof TabInputText && tab.input.uri.toString() === uri),
  );
  const texts = groups.find((group) => group.tabs.some((tab) => tab.input instanceof TabInputText));
  return (open ?? texts)?.viewColumn ?? ViewColumn.One;
}

/** "periodicals.joinery:22", for a list of places. */
export function placeLabel({ uri, range }: TextPlace): string {
  return `${nameOf(Uri.parse(uri))}:${range.start.line + 1}`;
}

/** The last part of a path. */
export const nameOf = ({ path }: Uri): string => path.slice(path.lastIndexOf('/') + 1);
