import { commands, type ExtensionContext, Uri, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { FitStates } from '../fit-states.js';
import { SlotPanel } from '../slots/slot-panel.js';
import { CabinetAtHand } from './at-hand.js';
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
  const atHand = new CabinetAtHand();
  const copy = (as: 'csv' | 'markdown') => () => {
    const active = tables.active() ?? tables.of(window.activeTextEditor?.document.uri);
    if (active) active.copy(as);
    else void window.showInformationMessage('Open a slot table first: Dryfit: Open Slot Table.');
  };
  context.subscriptions.push(
    atHand,
    commands.registerCommand('dryfit.openDrawing', async (uri?: unknown, cabinet?: unknown) =>
      drawings.open(fileIn(uri) ?? (await atHand.inFront()), nameIn(cabinet)),
    ),
    commands.registerCommand('dryfit.openSlotTable', async (uri?: unknown, cabinet?: unknown) =>
      tables.open(fileIn(uri) ?? (await atHand.inFront()), nameIn(cabinet)),
    ),
    commands.registerCommand('dryfit.copySlotsAsCsv', copy('csv')),
    commands.registerCommand('dryfit.copySlotsAsMarkdown', copy('markdown')),
    commands.registerCommand('dryfit.saveDrawing', () => drawings.active()?.save()),
  );
}

/** The file that a command is given. */
function fileIn(given: unknown): Uri | undefined {
  if (given instanceof Uri) return given;
  return typeof given === 'string' ? Uri.parse(given) : undefined;
}

/** A lens gives the cabinet it stands over; a menu gives other things. */
const nameIn = (given: unknown): string | undefined => (typeof given === 'string' ? given : undefined);
