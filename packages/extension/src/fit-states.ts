import { FILE_READ, FIT_STATE, type FileRead, type FitState } from '@dryfit/language/protocol';
import { type Disposable, type Event, EventEmitter } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** How files stand, as the server tells it: for all who want to know, since a client has one listener a message. */
export interface FitStates extends Disposable {
  readonly onTold: Event<FitState>;
  /** Address of a file that is not open, and has been read anew or is no more. */
  readonly onRead: Event<string>;
  /** What was last told of a file. */
  of(uri: string): FitState | undefined;
}

export function fitStatesOf(client: BaseLanguageClient): FitStates {
  const told = new EventEmitter<FitState>();
  const last = new Map<string, FitState>();
  const listening = client.onNotification(FIT_STATE, (state: FitState) => {
    last.set(state.uri, state);
    told.fire(state);
  });
  const read = new EventEmitter<string>();
  const reading = client.onNotification(FILE_READ, ({ uri }: FileRead) => read.fire(uri));
  return {
    onTold: told.event,
    onRead: read.event,
    of: (uri) => last.get(uri),
    dispose() {
      for (const one of [listening, reading, told, read]) one.dispose();
    },
  };
}
