import { run } from '../../packages/cli/src/run.js';
import { root } from '../house/sources.js';

export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs `dryfit` in this process, from the root of the house and without colour. */
export async function dryfit(...args: readonly string[]): Promise<Outcome> {
  let out = '';
  let err = '';
  const code = await run(args, {
    out: {
      isTerminal: false,
      write: (text) => {
        out += text;
      },
    },
    err: {
      isTerminal: false,
      write: (text) => {
        err += text;
      },
    },
    cwd: root,
    env: {},
    uninterrupted: async (work) => work(),
  });
  return { code, out, err };
}
