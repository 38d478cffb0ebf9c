import { DRAWINGS, type DrawnFile, type TextPlace } from '@dryfit/language/protocol';
import { type TextEditor, type Uri, type WebviewPanel, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { FitStates } from '../fit-states.js';
import { FilePanel } from './file-panel.js';
import { drawsOn, litBy, Turns } from './linking.js';
import type { FromDrawing, Standing, ToDrawing } from './messages.js';
import { placeLabel, reveal } from './reveal.js';
import { saveDrawing } from './save.js';

type Heard = Exclude<FromDrawing, { kind: 'ready' }>;

/** The drawing of one file, beside its text. */
export class DrawingPanel extends FilePanel<DrawnFile, FromDrawing, ToDrawing> {
  private readonly turns = new Turns();

  constructor(panel: WebviewPanel, uri: Uri, client: BaseLanguageClient, states: FitStates) {
    super(panel, uri, client, states, DRAWINGS);
  }

  /** Has the page hand over the drawing it shows, to be kept as a file. */
  save(): void {
    this.say({ kind: 'save' });
  }

  protected override drawsOn(uri: string): boolean {
    return this.answer !== undefined && drawsOn(this.answer, uri);
  }

  protected override show(standing: Standing, cabinet: string | undefined): void {
    this.say({ kind: 'drawn', standing, cabinet, scenes: this.answer?.cabinets.map(({ scene }) => scene) ?? [] });
    const editor = window.activeTextEditor;
    if (editor) this.light(editor, false);
  }

  /** Lights up what the cursor is in; the cabinet is changed to the one it is in only when the cursor has moved. */
  protected override light(editor: TextEditor, moved: boolean): void {
    const { answer: drawn } = this;
    const uri = editor.document.uri.toString();
    if (drawn === undefined || (uri !== this.uri.toString() && !drawsOn(drawn, uri))) return;
    const lit = litBy(drawn, uri, editor.selection.active);
    this.say({ kind: 'lit', lit, cabinet: moved ? Object.keys(lit)[0] : undefined });
  }

  protected override async hear(message: Heard): Promise<void> {
    switch (message.kind) {
      case 'open':
        return this.open(message.cabinet, message.shape, message.place);
      case 'places':
        return this.list(message.cabinet, message.shape);
      case 'finding': {
        const place = this.cabinet(message.cabinet)?.findingPlaces[message.index];
        return place && reveal(place);
      }
      case 'save':
        return saveDrawing(this.uri, message.name, message.svg);
    }
  }

  /** Shows a place of a shape in its text: the one asked for, or each in turn. */
  private async open(cabinet: string, shape: string, asked: number | undefined): Promise<void> {
    const places = this.placesOf(cabinet, shape);
    const key = `${cabinet}\n${shape}`;
    const at = asked ?? this.turns.next(key, places.length);
    if (asked !== undefined) this.turns.set(key, asked);
    const place = places[at];
    if (place === undefined) return;
    this.list(cabinet, shape, at);
    await reveal(place);
  }

  /** Tells the page where the text of a shape is, and which place of it is shown. */
  private list(cabinet: string, shape: string, at?: number): void {
    this.say({ kind: 'places', cabinet, shape, labels: this.placesOf(cabinet, shape).map(placeLabel), at });
  }

  private placesOf(cabinet: string, shape: string): readonly TextPlace[] {
    return this.cabinet(cabinet)?.places[shape] ?? [];
  }

  private cabinet(title: string) {
    return this.answer?.cabinets.find(({ scene }) => scene.title === title);
  }
}
