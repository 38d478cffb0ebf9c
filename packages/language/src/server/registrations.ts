import type { Connection } from 'vscode-languageserver';

/** A client may refuse to tell of changes that it is asked to tell of; the server does without and goes on. */
export function takeRefusals({ client, console }: Connection): void {
  const register = client.register.bind(client) as (...asked: readonly unknown[]) => Promise<unknown>;
  const forgiving = (...asked: readonly unknown[]) =>
    register(...asked).catch((error: unknown) => {
      console.info(`the editor does not tell of some changes: ${error instanceof Error ? error.message : error}`);
      return { dispose: () => {} };
    });
  client.register = forgiving as typeof client.register;
}
