import { commands, type ExtensionContext, Uri, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { FitStates } from '../fit-states.js';
import { PlanPanel } from '../plan/plan-panel.js';
import { jobOf, printSheets } from '../plan/print-sheets.js';
import { SlotPanel } from '../slots/slot-panel.js';
import type { CommandLine } from '../tasks/command-line.js';
import type { Wanted } from '../tasks/provider.js';
import { CabinetAtHand } from './at-hand.js';
import { DrawingPanel } from './drawing-panel.js';
import { PanelsByFile } from './panels-by-file.js';

/** The drawing, the slot table and the plan beside the text. */
export function registerViews(
  context: ExtensionContext,
  client: BaseLanguageClient,
  states: FitStates,
  commandLine: CommandLine | undefined,
): void {
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
  const print = (uri: Uri, wanted: Wanted) => printSheets(uri, wanted, commandLine);
  const plans = new PanelsByFile(context, {
    type: 'dryfit.plan',
    page: 'plan',
    title: (name) => `Plan of ${name}`,
    make: (panel, uri) => new PlanPanel(panel, uri, client, states, print),
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
    commands.registerCommand('dryfit.openPlan', async (uri?: unknown, job?: unknown) =>
      plans.open(fileIn(uri) ?? (await atHand.inFront()), nameIn(job)),
    ),
    commands.registerCommand('dryfit.printSheets', async () => {
      const shown = plans.front();
      if (shown?.shown !== undefined) return print(shown.uri, { job: shown.shown });
      const uri = await atHand.inFront();
      const job = uri && (await jobOf(uri, states));
      if (uri && job !== undefined) await print(uri, { job });
    }),
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

/** A lens gives the cabinet or the job it stands over; a menu gives other things. */
const nameIn = (given: unknown): string | undefined => (typeof given === 'string' ? given : undefined);
