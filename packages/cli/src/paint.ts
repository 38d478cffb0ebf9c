import { type Paint, PLAIN } from '@dryfit/output';
import pico from 'picocolors';
import type { Io, Stream } from './io.js';

/** Colours on a terminal that wants them (NO_COLOR unset or empty, TERM not dumb), none anywhere else. */
export function paintFor(stream: Stream, env: Io['env']): Paint {
  const wanted = stream.isTerminal && (env.NO_COLOR ?? '') === '' && env.TERM !== 'dumb';
  if (!wanted) return PLAIN;
  const { bold, dim, red, yellow, cyan } = pico.createColors(true);
  return {
    strong: bold,
    faint: dim,
    error: (text) => bold(red(text)),
    warning: (text) => bold(yellow(text)),
    info: (text) => bold(cyan(text)),
  };
}
