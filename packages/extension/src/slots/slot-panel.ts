import { SLOT_TABLE, SLOTS, type SlotRows, type SlotTableAsked } from '@dryfit/language/protocol';
import { type Disposable, env, type TextEditor, type Uri, type WebviewPanel, window } from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import type { FitStates } from '../fit-states.js';
import { Asking } from '../panel/asking.js';
import { Turns } from '../panel/linking.js';
import type { FromSlots, ToSlots } from '../panel/messages.js';
import { reveal } from '../panel/reveal.js';
import { type Subject, subjectOf } from '../panel/subject.js';
import { rowsAt } from './rows.js';

/** The slot table of one file. */
export class SlotPanel implements Disposable {
  private readonly subject: Subject;
  private readonly asking: Asking<SlotRows | null>;
  private readonly turns = new Turns();
  private readonly all: Disposable[];
  private table: SlotRows | undefined;
  private unreadable = false;

  constructor(
    readonly panel: WebviewPanel,
    readonly uri: Uri,
    private readonly client: BaseLanguageClient,
    states: FitStates,
  ) {
    this.subject = subjectOf(
      uri,
      states,
      (other) => this.table?.rows.some(({ places }) => places.some((place) => place.uri === other)) ?? true,
    );
    this.asking = new Asking(
      () => client.sendRequest<SlotRows | null>(SLOTS, { textDocument: { uri: uri.toString() } }),
      (table) => this.take(table),
      // A server that starts or stops has no answer; there will be news when it has.
      () => undefined,
    );
    this.all = [
      this.subject,
      { dispose: () => this.asking.end() },
      this.subject.onNews(() => this.asking.want()),
      client.onDidChangeState(({ newState }) => newState === State.Running && this.asking.want()),
      this.subject.onCursor((editor) => this.light(editor)),
      panel.onDidChangeViewState(() => this.asking.look(panel.visible)),
      panel.webview.onDidReceiveMessage((message: FromSlots) => void this.hear(message)),
      panel.onDidDispose(() => this.dispose()),
    ];
    this.asking.look(panel.visible);
    this.asking.want();
  }

  dispose(): void {
    for (const one of this.all) one.dispose();
  }

  /** Has the page copy the rows it shows. */
  copy(as: 'csv' | 'markdown'): void {
    this.say({ kind: 'copy', as });
  }

  private take(table: SlotRows | null): void {
    this.unreadable = table === null;
    if (table !== null) this.table = table;
    this.show();
  }

  private show(): void {
    const { table, subject } = this;
    if (table === undefined && !this.unreadable) return;
    this.say({
      kind: 'rows',
      standing: {
        name: subject.name,
        uri: subject.uri.toString(),
        file: subject.deleted ? 'deleted' : this.unreadable ? 'unreadable' : 'there',
        broken: table?.broken ?? false,
        stale: table?.stale ?? false,
        workedOut: table?.workedOut ?? true,
      },
      table,
    });
    if (window.activeTextEditor) this.light(window.activeTextEditor);
  }

  private light({ document, selection }: TextEditor): void {
    if (this.table === undefined) return;
    this.say({ kind: 'lit', rows: rowsAt(this.table, document.uri.toString(), selection.active) });
  }

  private async hear(message: FromSlots): Promise<void> {
    switch (message.kind) {
      case 'ready':
        return this.show();
      case 'open': {
        const places = this.table?.rows[message.row]?.places ?? [];
        const place = places[this.turns.next(String(message.row), places.length)];
        return place && reveal(place);
      }
      case 'copy':
        return this.toClipboard(message);
    }
  }

  private async toClipboard({ as, cabinet, rows }: Extract<FromSlots, { kind: 'copy' }>): Promise<void> {
    const asked: SlotTableAsked = { textDocument: { uri: this.uri.toString() }, as, cabinet, rows };
    const text = await this.client.sendRequest<string | null>(SLOT_TABLE, asked);
    if (text === null) return;
    await env.clipboard.writeText(text);
    this.say({ kind: 'copied', as, rows: rows.length });
  }

  private say(message: ToSlots): void {
    void this.panel.webview.postMessage(message);
  }
}
