import { type Disposable, type Event, EventEmitter, type TextEditor, type Uri, window, workspace } from 'vscode';
import type { FitStates } from '../fit-states.js';
import { nameOf } from './reveal.js';

/** The file a panel shows: when there may be something new to show of it, and where the cursor is. */
export interface Subject extends Disposable {
  readonly uri: Uri;
  readonly name: string;
  readonly deleted: boolean;
  /** The file, or one it draws on, has been worked out anew, or it has appeared or gone. */
  readonly onNews: Event<void>;
  readonly onCursor: Event<TextEditor>;
}

/** `drawsOn` tells of another file whether what is shown depends on it. */
export function subjectOf(uri: Uri, states: FitStates, drawsOn: (uri: string) => boolean): Subject {
  const news = new EventEmitter<void>();
  const cursor = new EventEmitter<TextEditor>();
  const key = uri.toString();
  let deleted = false;
  const set = (gone: boolean) => {
    deleted = gone;
    news.fire();
  };
  const watcher = workspace.createFileSystemWatcher('**/*.joinery', false, true, false);
  const all: Disposable[] = [
    news,
    cursor,
    watcher,
    watcher.onDidDelete((gone) => gone.toString() === key && set(true)),
    watcher.onDidCreate((made) => made.toString() === key && set(false)),
    workspace.onDidDeleteFiles(({ files }) => files.some((file) => key.startsWith(file.toString())) && set(true)),
    workspace.onDidCloseTextDocument((document) => document.uri.toString() === key && news.fire()),
    states.onTold((state) => {
      if (state.uri === key) deleted = false;
      if (state.uri === key || drawsOn(state.uri)) news.fire();
    }),
    window.onDidChangeTextEditorSelection(({ textEditor }) => cursor.fire(textEditor)),
    window.onDidChangeActiveTextEditor((editor) => editor && cursor.fire(editor)),
  ];
  return {
    uri,
    name: nameOf(uri),
    get deleted() {
      return deleted;
    },
    onNews: news.event,
    onCursor: cursor.event,
    dispose: () => {
      for (const one of all) one.dispose();
    },
  };
}
