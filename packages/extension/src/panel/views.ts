import { commands, type Disposable, type ExtensionContext, Uri, ViewColumn, type WebviewPanel, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { languageId } from '../client-options.js';
import type { FitStates } from '../fit-states.js';
import { SlotPanel } from '../slots/slot-panel.js';
import { DrawingPanel } from './drawing-panel.js';
import { page, pageRoots } from './page.js';
import { nameOf } from './reveal.js';

/** A panel that shows one file. */
interface Shown extends Disposable {
  readonly panel: WebviewPanel;
  readonly uri: Uri;
}

interface ViewKind<P extends Shown> {
  readonly type: string;
  readonly page: 'drawing' | 'slots';
  readonly title: (name: string) => string;
  readonly make: (panel: WebviewPanel, uri: Uri) => P;
}

/** Panels beside the text, one a file and kind; they come back after a restart of the editor. */
export function registerViews(context: ExtensionContext, client: BaseLanguageClient, states: FitStates): void {
  const drawings = new Views(context, {
    type: 'dryfit.drawing',
    page: 'drawing',
    title: (name) => `Drawing of ${name}`,
    make: (panel, uri) => new DrawingPanel(panel, uri, client, states),
  });
  const tables = new Views(context, {
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
    commands.registerCommand('dryfit.openDrawing', (uri?: unknown) => drawings.open(fileOf(uri))),
    commands.registerCommand('dryfit.openSlotTable', (uri?: unknown) => tables.open(fileOf(uri))),
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

class Views<P extends Shown> {
  private readonly shown = new Map<string, P>();

  constructor(
    private readonly context: ExtensionContext,
    private readonly kind: ViewKind<P>,
  ) {
    context.subscriptions.push(
      window.registerWebviewPanelSerializer(kind.type, {
        deserializeWebviewPanel: async (panel, state: unknown) => {
          const uri = uriIn(state);
          // A page that never got to say what it showed has nothing to come back to.
          if (uri === undefined || this.shown.has(uri)) panel.dispose();
          else this.fill(panel, Uri.parse(uri));
        },
      }),
      { dispose: () => this.shown.forEach((one) => void one.panel.dispose()) },
    );
  }

  open(uri: Uri | undefined): void {
    if (uri === undefined) {
      void window.showInformationMessage('Open a .joinery file first: there is no cabinet to show.');
      return;
    }
    const there = this.of(uri);
    if (there) {
      there.panel.reveal(undefined, true);
      return;
    }
    const panel = window.createWebviewPanel(
      this.kind.type,
      this.kind.title(nameOf(uri)),
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      {},
    );
    this.fill(panel, uri);
  }

  of(uri: Uri | undefined): P | undefined {
    return uri && this.shown.get(uri.toString());
  }

  active(): P | undefined {
    const all = [...this.shown.values()];
    return all.find(({ panel }) => panel.active) ?? (all.length === 1 ? all[0] : undefined);
  }

  private fill(panel: WebviewPanel, uri: Uri): void {
    const { extensionUri } = this.context;
    const icon = (name: string) => Uri.joinPath(extensionUri, 'icons', name);
    panel.title = this.kind.title(nameOf(uri));
    panel.iconPath = { light: icon('file-light.svg'), dark: icon('file-dark.svg') };
    panel.webview.options = { enableScripts: true, localResourceRoots: pageRoots(extensionUri) };
    const shown = this.kind.make(panel, uri);
    this.shown.set(uri.toString(), shown);
    panel.onDidDispose(() => {
      this.shown.delete(uri.toString());
      shown.dispose();
    });
    panel.webview.html = page(panel.webview, extensionUri, this.kind.page, panel.title);
  }
}

const uriIn = (state: unknown): string | undefined =>
  typeof state === 'object' && state !== null && 'uri' in state && typeof state.uri === 'string'
    ? state.uri
    : undefined;
