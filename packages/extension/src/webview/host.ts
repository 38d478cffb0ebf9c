/** The editor around a page: what a page says to the extension, and what it keeps for when it is shown again. */
export interface Host<Say, Kept> {
  say(message: Say): void;
  kept(): Partial<Kept> | undefined;
  keep(state: Kept): void;
}

interface EditorApi {
  postMessage(message: unknown): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): EditorApi;

/** May be called once a page. */
export function hostOf<Say, Kept extends object>(): Host<Say, Kept> {
  const api = acquireVsCodeApi();
  return {
    say: (message) => api.postMessage(message),
    kept: () => {
      const state = api.getState();
      return typeof state === 'object' && state !== null ? (state as Partial<Kept>) : undefined;
    },
    keep: (state) => api.setState(state),
  };
}
