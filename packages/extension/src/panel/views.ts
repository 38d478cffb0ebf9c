import { commands, type ExtensionContext, Uri, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { languageId } from '../client-options.js';
import type { FitStates } from '../fit-states.js';
import { SlotPanel } from '../slots/slot-panel.js';
import { DrawingPanel } from './drawing-panel.js';
import { PanelsByFile } from './panels-by-file.js';

/** The drawing and the slot table beside the text. */
export function registerViews(context: ExtensionContext, client: BaseLanguageClient, states: FitStates): void {
  const drawings = new PanelsByFile(context, {
    type: 'dryfit.drawing',
    page: 'drawing',
    title: (name) => `Drawing of ${name}`,
    make: (panel, uri) => new DrawingPanel(panel, uri, client, states),
  });
  const tables = new PanelsByFile(context, {
    type: 'dryfit.slots',
    page: 'slots',
    title: (name) => `Slots of ${name}`,
    make: (panel, uri) => new SlotPanel(panel, uri, client, states),
  });
  const copy = (as: 'csv' | 'markdown') => () => {
    const active = tables.active() ?? tables.of(window.activeTextEditor?.document.uri);
    if (active) active.copy(as);
    else void window.showInformationMessage('Open a slot table first: Dryfit: Open Slot Table.');
  };
  context.subscriptions.push(
    commands.registerCommand('dryfit.openDrawing', (uri?: unknown, cabinet?: unknown) =>
      drawings.open(fileOf(uri), nameIn(cabinet)),
    ),
    commands.registerCommand('dryfit.openSlotTable', (uri?: unknown, cabinet?: unknown) =>
      tables.open(fileOf(uri), nameIn(cabinet)),
    ),
    commands.registerCommand('dryfit.copySlotsAsCsv', copy('csv')),
    commands.registerCommand('dryfit.copySlotsAsMarkdown', copy('markdown')),
    commands.registerCommand('dryfit.saveDrawing', () => drawings.active()?.save()),
  );
}

/** The file a command is about: the one it is given, or the one that is edited. */
function fileOf(given: unknown): Uri | undefined {
  if (given instanceof Uri) return given;
  if (typeof given === 'string') return Uri.parse(given);
  const document = window.activeTextEditor?.document;
  return document?.languageId === languageId || document?.uri.path.endsWith('.joinery') ? document.uri : undefined;
}

/** A lens gives the cabinet it stands over; a menu gives other things. */
const nameIn = (given: unknown): string | undefined => (typeof given === 'string' ? given : undefined);
