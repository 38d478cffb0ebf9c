import { FIT_STATE, type FitState } from '@dryfit/language/protocol';
import { type Disposable, type Event, EventEmitter } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** How files stand, as the server tells it: for all who want to know, since a client has one listener a message. */
export interface FitStates extends Disposable {
  readonly onTold: Event<FitState>;
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
  return {
    onTold: told.event,
    of: (uri) => last.get(uri),
    dispose() {
      listening.dispose();
      told.dispose();
    },
  };
}
