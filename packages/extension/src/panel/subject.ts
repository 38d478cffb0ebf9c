import {
  type Disposable,
  type Event,
  EventEmitter,
  RelativePattern,
  type TextDocument,
  type TextEditor,
  Uri,
  window,
  workspace,
} from 'vscode';
import type { FitStates } from '../fit-states.js';
import { nameOf } from './reveal.js';

/** The file a panel shows: when there may be something new to show of it, and where the cursor is. */
export interface Subject extends Disposable {
  readonly uri: Uri;
  readonly name: string;
  /** Whether the file is there; `open` if only an editor still holds its text, `closed` if it never was on a disk. */
  readonly file: 'there' | 'open' | 'deleted' | 'closed';
  /** The file, or one it draws on, has been worked out anew, or it has appeared or gone. */
  readonly onNews: Event<void>;
  readonly onCursor: Event<TextEditor>;
  /** Looks whether the file is there at all; there is news if that has changed. */
  look(): Promise<void>;
}

/** `drawsOn` tells of another file whether what is shown depends on it. */
export function subjectOf(uri: Uri, states: FitStates, drawsOn: (uri: string) => boolean): Subject {
  const news = new EventEmitter<void>();
  const cursor = new EventEmitter<TextEditor>();
  const key = uri.toString();
  const isOwn = (document: TextDocument) => document.uri.toString() === key;
  let gone = false;
  const set = (now: boolean) => {
    gone = now;
    news.fire();
  };
  const look = async () => {
    const now = await isMissing(uri);
    if (now !== gone) set(now);
  };
  const heard = (other: string) => {
    if (other === key || drawsOn(other)) news.fire();
  };
  const all: Disposable[] = [
    news,
    cursor,
    ...watched(uri, set),
    workspace.onDidDeleteFiles(({ files }) => files.some((file) => isIn(uri, file)) && set(true)),
    workspace.onDidSaveTextDocument((document) => isOwn(document) && gone && set(false)),
    workspace.onDidOpenTextDocument((document) => isOwn(document) && news.fire()),
    workspace.onDidCloseTextDocument((document) => isOwn(document) && news.fire()),
    states.onTold((state) => heard(state.uri)),
    states.onRead(heard),
    window.onDidChangeTextEditorSelection(({ textEditor }) => cursor.fire(textEditor)),
    window.onDidChangeActiveTextEditor((editor) => editor && cursor.fire(editor)),
  ];
  return {
    uri,
    name: nameOf(uri),
    get file() {
      const open = workspace.textDocuments.some((document) => isOwn(document) && !document.isClosed);
      if (uri.scheme === 'untitled') return open ? 'there' : 'closed';
      if (!gone) return 'there';
      return open ? 'open' : 'deleted';
    },
    onNews: news.event,
    onCursor: cursor.event,
    look,
    dispose: () => {
      for (const one of all) one.dispose();
    },
  };
}

/** What tells of a file that it has gone or come back; of one that was never on a disk nothing does. */
function watched(uri: Uri, set: (gone: boolean) => void): readonly Disposable[] {
  if (uri.scheme === 'untitled') return [];
  const watcher = workspace.createFileSystemWatcher(new RelativePattern(Uri.joinPath(uri, '..'), '*'), false, true);
  const isOwn = (other: Uri) => other.toString() === uri.toString();
  return [
    watcher,
    watcher.onDidDelete((other) => isOwn(other) && set(true)),
    watcher.onDidCreate((other) => isOwn(other) && set(false)),
  ];
}

/** True of a file itself and of a folder it lies in, however deep. */
export const isIn = (uri: Uri, above: Uri): boolean =>
  uri.toString() === above.toString() || uri.toString().startsWith(`${above.toString().replace(/\/$/, '')}/`);

async function isMissing(uri: Uri): Promise<boolean> {
  try {
    await workspace.fs.stat(uri);
    return false;
  } catch {
    return true;
  }
}
