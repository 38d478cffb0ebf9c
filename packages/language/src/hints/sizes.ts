import { AXES, type FittedPart } from '@dryfit/engine';
import type { PartLine } from '../generated/ast.js';
import { paragraphs, stale } from '../hover/markdown.js';
import { partHover } from '../hover/part.js';
import type { Fitted, Hint } from './hint.js';

/** More sizes than this on one line are left to the hover. */
const MOST = 3;

/** At the end of a line that declares parts, their finished sizes; each once, with its parts where they differ. */
export function sizeHints(line: PartLine, fitted: Fitted): Hint[] {
  const end = line.$cstNode?.end;
  const names = line.parts.map(({ name }) => name).filter((name) => name !== undefined);
  const parts = fitted.result.fit.parts.filter(({ kind }) => names.includes(kind));
  if (end === undefined || parts.length === 0) return [];
  const sizes = new Map<string, FittedPart[]>();
  for (const part of parts) {
    const size = sizeOf(part, fitted);
    sizes.set(size, [...(sizes.get(size) ?? []), part]);
  }
  const told = [...sizes].slice(0, MOST).map(([size, same]) => (sizes.size === 1 ? size : `${whose(same)} ${size}`));
  const rest = sizes.size > MOST ? ', …' : '';
  return [
    {
      offset: end,
      label: `${told.join(', ')}${rest}`,
      why: () => whyOf(names, fitted),
    },
  ];
}

/** `564.6 × 538 × 17.7`, width × depth × height, with `?` for what nothing fixes. */
function sizeOf(part: FittedPart, { lengths }: Fitted): string {
  return AXES.map((axis) => {
    const size = part.extent[axis];
    return size === undefined ? '?' : lengths.of(size);
  }).join(' × ');
}

const whose = (parts: readonly FittedPart[]): string =>
  parts.length > 2 ? `${parts[0]?.id} … ${parts.at(-1)?.id}` : parts.map(({ id }) => id).join(' and ');

function whyOf(names: readonly string[], fitted: Fitted): string | undefined {
  const shown = names.slice(0, MOST).map((name) => partHover(fitted.result, name, fitted.lengths));
  return stale(paragraphs('Width × depth × height, finished.', ...shown), fitted);
}
