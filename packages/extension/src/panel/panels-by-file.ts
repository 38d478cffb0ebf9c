import { type Disposable, type ExtensionContext, Uri, ViewColumn, type WebviewPanel, window, workspace } from 'vscode';
import { type PageName, page, pageRoots } from './page.js';
import { nameOf } from './reveal.js';
import { isIn } from './subject.js';

/** A panel that shows one file. */
export interface Shown extends Disposable {
  readonly panel: WebviewPanel;
  readonly uri: Uri;
  move(uri: Uri): void;
  turnTo(cabinet: string): void;
}

interface PanelKind<P extends Shown> {
  readonly type: string;
  readonly page: PageName;
  readonly title: (name: string) => string;
  readonly make: (panel: WebviewPanel, uri: Uri) => P;
}

/** Panels of one kind, one a file; they come back after a restart of the editor. */
export class PanelsByFile<P extends Shown> {
  private readonly shown = new Map<string, P>();

  constructor(
    private readonly context: ExtensionContext,
    private readonly kind: PanelKind<P>,
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
      workspace.onDidRenameFiles(({ files }) => {
        for (const { oldUri, newUri } of files) this.moved(oldUri, newUri);
      }),
      { dispose: () => this.shown.forEach((one) => void one.panel.dispose()) },
    );
  }

  /** Shows a file, perhaps one cabinet of it before the others. */
  open(uri: Uri | undefined, cabinet?: string): void {
    if (uri === undefined) {
      void window.showInformationMessage('Open a .joinery file first: there is no cabinet to show.');
      return;
    }
    const there = this.of(uri);
    if (there) {
      there.panel.reveal(undefined, true);
      if (cabinet !== undefined) there.turnTo(cabinet);
      return;
    }
    const panel = window.createWebviewPanel(
      this.kind.type,
      this.kind.title(nameOf(uri)),
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      {},
    );
    const shown = this.fill(panel, uri);
    if (cabinet !== undefined) shown.turnTo(cabinet);
  }

  of(uri: Uri | undefined): P | undefined {
    return uri && this.shown.get(uri.toString());
  }

  /** The one that has the keyboard. */
  front(): P | undefined {
    return [...this.shown.values()].find(({ panel }) => panel.active);
  }

  active(): P | undefined {
    const all = [...this.shown.values()];
    return this.front() ?? (all.length === 1 ? all[0] : undefined);
  }

  private fill(panel: WebviewPanel, uri: Uri): P {
    const { extensionUri } = this.context;
    const icon = (name: string) => Uri.joinPath(extensionUri, 'icons', name);
    panel.title = this.kind.title(nameOf(uri));
    panel.iconPath = { light: icon('file-light.svg'), dark: icon('file-dark.svg') };
    panel.webview.options = { enableScripts: true, localResourceRoots: pageRoots(extensionUri) };
    const shown = this.kind.make(panel, uri);
    this.shown.set(uri.toString(), shown);
    panel.onDidDispose(() => {
      if (this.of(shown.uri) === shown) this.shown.delete(shown.uri.toString());
      shown.dispose();
    });
    panel.webview.html = page(panel.webview, extensionUri, this.kind.page, panel.title);
    return shown;
  }

  /** Panels follow their files to another name or place; what was shown of a file that is overwritten goes. */
  private moved(from: Uri, to: Uri): void {
    for (const shown of [...this.shown.values()].filter(({ uri }) => isIn(uri, from))) {
      const { uri } = shown;
      const now = uri.with({ path: to.path + uri.path.slice(from.path.length), scheme: to.scheme });
      this.of(now)?.panel.dispose();
      this.shown.delete(uri.toString());
      this.shown.set(now.toString(), shown);
      shown.panel.title = this.kind.title(nameOf(now));
      shown.move(now);
    }
  }
}

const uriIn = (state: unknown): string | undefined =>
  typeof state === 'object' && state !== null && 'uri' in state && typeof state.uri === 'string'
    ? state.uri
    : undefined;
