import { DRAWINGS, type DrawnFile, type TextPlace } from '@dryfit/language/protocol';
import { type Disposable, type TextEditor, type Uri, type WebviewPanel, window } from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import type { FitStates } from '../fit-states.js';
import { Asking } from './asking.js';
import { drawsOn, litBy, Turns } from './linking.js';
import type { FromDrawing, ToDrawing } from './messages.js';
import { placeLabel, reveal } from './reveal.js';
import { saveDrawing } from './save.js';
import { type Subject, subjectOf } from './subject.js';

/** The drawing of one file, beside its text. */
export class DrawingPanel implements Disposable {
  private readonly subject: Subject;
  private readonly asking: Asking<DrawnFile | null>;
  private readonly turns = new Turns();
  private readonly all: Disposable[];
  private drawn: DrawnFile | undefined;
  private unreadable = false;

  constructor(
    readonly panel: WebviewPanel,
    readonly uri: Uri,
    client: BaseLanguageClient,
    states: FitStates,
  ) {
    this.subject = subjectOf(uri, states, (other) => this.drawn !== undefined && drawsOn(this.drawn, other));
    this.asking = new Asking(
      () => client.sendRequest<DrawnFile | null>(DRAWINGS, { textDocument: { uri: uri.toString() } }),
      (drawn) => this.take(drawn),
      // A server that starts or stops has no answer; there will be news when it has.
      () => undefined,
    );
    this.all = [
      this.subject,
      { dispose: () => this.asking.end() },
      this.subject.onNews(() => this.asking.want()),
      client.onDidChangeState(({ newState }) => newState === State.Running && this.asking.want()),
      this.subject.onCursor((editor) => this.light(editor, true)),
      panel.onDidChangeViewState(() => this.asking.look(panel.visible)),
      panel.webview.onDidReceiveMessage((message: FromDrawing) => void this.hear(message)),
      panel.onDidDispose(() => this.dispose()),
    ];
    this.asking.look(panel.visible);
    this.asking.want();
  }

  dispose(): void {
    for (const one of this.all) one.dispose();
  }

  /** Has the page hand over the drawing it shows, to be kept as a file. */
  save(): void {
    this.say({ kind: 'save' });
  }

  private take(drawn: DrawnFile | null): void {
    this.unreadable = drawn === null;
    // What was last drawn stays when its file is gone; the page says that it is.
    if (drawn !== null) this.drawn = drawn;
    this.show();
  }

  private show(): void {
    const { drawn, subject } = this;
    if (drawn === undefined && !this.unreadable) return;
    this.say({
      kind: 'drawn',
      standing: {
        name: subject.name,
        uri: subject.uri.toString(),
        file: subject.deleted ? 'deleted' : this.unreadable ? 'unreadable' : 'there',
        broken: drawn?.broken ?? false,
        stale: drawn?.stale ?? false,
        workedOut: drawn?.workedOut ?? true,
      },
      scenes: drawn?.cabinets.map(({ scene }) => scene) ?? [],
    });
    const editor = window.activeTextEditor;
    if (editor) this.light(editor, false);
  }

  /** Lights up what the cursor is in; the cabinet is changed to the one it is in only when the cursor has moved. */
  private light(editor: TextEditor, moved: boolean): void {
    const { drawn } = this;
    const uri = editor.document.uri.toString();
    if (drawn === undefined || (uri !== this.uri.toString() && !drawsOn(drawn, uri))) return;
    const lit = litBy(drawn, uri, editor.selection.active);
    this.say({ kind: 'lit', lit, cabinet: moved ? Object.keys(lit)[0] : undefined });
  }

  private async hear(message: FromDrawing): Promise<void> {
    switch (message.kind) {
      case 'ready':
        return this.show();
      case 'open':
        return this.open(message.cabinet, message.shape, message.place);
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
    const places: readonly TextPlace[] = this.cabinet(cabinet)?.places[shape] ?? [];
    const key = `${cabinet}\n${shape}`;
    const at = asked ?? this.turns.next(key, places.length);
    if (asked !== undefined) this.turns.set(key, asked);
    const place = places[at];
    if (place === undefined) return;
    this.say({ kind: 'places', cabinet, shape, labels: places.map(placeLabel), at });
    await reveal(place);
  }

  private cabinet(title: string) {
    return this.drawn?.cabinets.find(({ scene }) => scene.title === title);
  }

  private say(message: ToDrawing): void {
    void this.panel.webview.postMessage(message);
  }
}
