import { SLOT_TABLE, SLOTS, type SlotRows, type SlotTableAsked } from '@dryfit/language/protocol';
import { env, type TextEditor, type Uri, type WebviewPanel, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { FitStates } from '../fit-states.js';
import { FilePanel } from '../panel/file-panel.js';
import { Turns } from '../panel/linking.js';
import type { FromSlots, Standing, ToSlots } from '../panel/messages.js';
import { reveal } from '../panel/reveal.js';
import { rowsAt } from './rows.js';

type Heard = Exclude<FromSlots, { kind: 'ready' }>;

/** The slot table of one file. */
export class SlotPanel extends FilePanel<SlotRows, FromSlots, ToSlots> {
  private readonly turns = new Turns();

  constructor(panel: WebviewPanel, uri: Uri, client: BaseLanguageClient, states: FitStates) {
    super(panel, uri, client, states, SLOTS);
  }

  /** Has the page copy the rows it shows. */
  copy(as: 'csv' | 'markdown'): void {
    this.say({ kind: 'copy', as });
  }

  protected override drawsOn(uri: string): boolean {
    return this.answer?.rows.some(({ places }) => places.some((place) => place.uri === uri)) ?? true;
  }

  protected override show(standing: Standing, cabinet: string | undefined): void {
    this.say({ kind: 'rows', standing, cabinet, table: this.answer });
    if (window.activeTextEditor) this.light(window.activeTextEditor);
  }

  protected override light({ document, selection }: TextEditor): void {
    if (this.answer === undefined) return;
    this.say({ kind: 'lit', rows: rowsAt(this.answer, document.uri.toString(), selection.active) });
  }

  protected override async hear(message: Heard): Promise<void> {
    switch (message.kind) {
      case 'open': {
        const places = this.answer?.rows[message.row]?.places ?? [];
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
}
