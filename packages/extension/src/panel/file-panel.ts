import type { Disposable, TextEditor, Uri, WebviewPanel } from 'vscode';
import { type BaseLanguageClient, CancellationTokenSource, State } from 'vscode-languageclient';
import type { FitStates } from '../fit-states.js';
import { Asking, type Question } from './asking.js';
import type { Standing } from './messages.js';
import { type Subject, subjectOf } from './subject.js';

/** What any answer about a file says of how it stands. */
interface Answer {
  readonly broken: boolean;
  readonly stale: boolean;
  readonly workedOut: boolean;
}

/** A page about one file: asks the server again when there is news, keeps the last answer when the file is gone. */
export abstract class FilePanel<T extends Answer, From extends { readonly kind: string }, To> implements Disposable {
  /** The last answer there was. */
  protected answer: T | undefined;
  private subject: Subject;
  private readonly asking: Asking<T | null>;
  private readonly all: Disposable[];
  private following: Disposable[] = [];
  private unreadable = false;
  /** The page has said that it listens. */
  private ready = false;
  /** A cabinet that is to be brought to the front once there is a page to do it. */
  private wanted: string | undefined;

  /** @param request what the server is asked about the file; null means that there is no such file. */
  constructor(
    readonly panel: WebviewPanel,
    uri: Uri,
    protected readonly client: BaseLanguageClient,
    private readonly states: FitStates,
    private readonly request: string,
  ) {
    this.asking = new Asking(
      () => this.question(),
      (answer) => this.take(answer),
      // A server that starts or stops has no answer, nor has a question that was cancelled; there will be news.
      () => undefined,
    );
    this.subject = this.follow(uri);
    this.all = [
      { dispose: () => this.asking.end() },
      client.onDidChangeState(({ newState }) => {
        if (newState === State.Running) this.asking.want();
        else this.asking.forget();
        this.refresh();
      }),
      panel.onDidChangeViewState(() => {
        // The page of a panel that is not seen is thrown away; there is another when it is seen again.
        if (!panel.visible) this.ready = false;
        this.asking.look(panel.visible);
      }),
      panel.webview.onDidReceiveMessage((message: From) => {
        if (message.kind === 'ready') this.listens();
        else void this.hear(message);
      }),
      panel.onDidDispose(() => this.dispose()),
    ];
    this.asking.look(panel.visible);
    this.asking.want();
  }

  dispose(): void {
    for (const one of [...this.all, ...this.following]) one.dispose();
  }

  get uri(): Uri {
    return this.subject.uri;
  }

  /** The file has another name or place now. */
  move(uri: Uri): void {
    this.subject = this.follow(uri);
    this.unreadable = false;
    this.asking.want();
    this.refresh();
  }

  /** Brings a cabinet of the file to the front. */
  turnTo(cabinet: string): void {
    this.wanted = cabinet;
    this.refresh();
  }

  /** Whether another file has a part in what is shown. */
  protected abstract drawsOn(uri: string): boolean;
  /** Shows what there is, perhaps a cabinet before the others. */
  protected abstract show(standing: Standing, cabinet: string | undefined): void;
  /** Marks what the cursor is in; `moved` if that is news. */
  protected abstract light(editor: TextEditor, moved: boolean): void;
  protected abstract hear(message: From): Promise<void>;

  /** What the server is asked beside which file it is about. */
  protected more(): object {
    return {};
  }

  /** There may be another answer. */
  protected askAgain(): void {
    this.asking.want();
  }

  protected say(message: To): void {
    void this.panel.webview.postMessage(message);
  }

  private listens(): void {
    this.ready = true;
    this.refresh();
  }

  private refresh(): void {
    const { standing } = this;
    if (!this.ready || standing === undefined) return;
    const cabinet = this.answer === undefined ? undefined : this.wanted;
    if (cabinet !== undefined) this.wanted = undefined;
    this.show(standing, cabinet);
  }

  /** How the file stands; undefined until the server has said anything. */
  private get standing(): Standing | undefined {
    const { answer, subject, unreadable } = this;
    if (answer === undefined && !unreadable) return undefined;
    const { file } = subject;
    return {
      name: subject.name,
      uri: subject.uri.toString(),
      file: file === 'there' && unreadable ? 'unreadable' : file,
      served: this.client.state === State.Running,
      last: answer !== undefined,
      broken: answer?.broken ?? false,
      stale: answer?.stale ?? false,
      workedOut: answer?.workedOut ?? true,
    };
  }

  private follow(uri: Uri): Subject {
    for (const one of this.following) one.dispose();
    const subject = subjectOf(uri, this.states, (other) => this.drawsOn(other));
    this.following = [
      subject,
      subject.onNews(() => this.asking.want()),
      subject.onCursor((editor) => this.light(editor, true)),
    ];
    return subject;
  }

  private question(): Question<T | null> {
    const { uri } = this;
    const source = new CancellationTokenSource();
    const asked = { textDocument: { uri: uri.toString() }, ...this.more() };
    const answer = this.client.sendRequest<T | null>(this.request, asked, source.token);
    return { answer: answer.finally(() => source.dispose()), cancel: () => source.cancel() };
  }

  private take(answer: T | null): void {
    this.unreadable = answer === null;
    // What was last there stays when its file is gone; the page says that it is.
    if (answer !== null) this.answer = answer;
    else void this.subject.look();
    this.refresh();
  }
}
