import type { Disposable, TextEditor, Uri, WebviewPanel } from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import type { FitStates } from '../fit-states.js';
import { Asking } from './asking.js';
import type { Standing } from './messages.js';
import { type Subject, subjectOf } from './subject.js';

/** What any answer about a file says of how it stands. */
interface Answer {
  readonly broken: boolean;
  readonly stale: boolean;
  readonly workedOut: boolean;
}

/** A page about one file: asks the server again when there is news, keeps the last answer when the file is gone. */
export abstract class FilePanel<T extends Answer, From, To> implements Disposable {
  /** The last answer there was. */
  protected answer: T | undefined;
  private readonly subject: Subject;
  private readonly asking: Asking<T | null>;
  private readonly all: Disposable[];
  private unreadable = false;

  /** @param request what the server is asked about the file; null means that there is no such file. */
  constructor(
    readonly panel: WebviewPanel,
    readonly uri: Uri,
    protected readonly client: BaseLanguageClient,
    states: FitStates,
    request: string,
  ) {
    this.subject = subjectOf(uri, states, (other) => this.drawsOn(other));
    this.asking = new Asking(
      () => client.sendRequest<T | null>(request, { textDocument: { uri: uri.toString() } }),
      (answer) => this.take(answer),
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
      panel.webview.onDidReceiveMessage((message: From) => void this.hear(message)),
      panel.onDidDispose(() => this.dispose()),
    ];
    this.asking.look(panel.visible);
    this.asking.want();
  }

  dispose(): void {
    for (const one of this.all) one.dispose();
  }

  /** Whether another file has a part in what is shown. */
  protected abstract drawsOn(uri: string): boolean;
  /** Shows what there is, once there is something to show. */
  protected abstract show(): void;
  /** Marks what the cursor is in; `moved` if that is news. */
  protected abstract light(editor: TextEditor, moved: boolean): void;
  protected abstract hear(message: From): Promise<void>;

  protected say(message: To): void {
    void this.panel.webview.postMessage(message);
  }

  /** How the file stands; undefined until the server has said anything. */
  protected get standing(): Standing | undefined {
    const { answer, subject, unreadable } = this;
    if (answer === undefined && !unreadable) return undefined;
    return {
      name: subject.name,
      uri: subject.uri.toString(),
      file: subject.deleted ? 'deleted' : unreadable ? 'unreadable' : 'there',
      broken: answer?.broken ?? false,
      stale: answer?.stale ?? false,
      workedOut: answer?.workedOut ?? true,
    };
  }

  private take(answer: T | null): void {
    this.unreadable = answer === null;
    // What was last there stays when its file is gone; the page says that it is.
    if (answer !== null) this.answer = answer;
    this.show();
  }
}
