import type { LexerResult } from 'langium';
import { type Cabinet, type File, isCabinet, isParameter, type Parameter } from '../generated/ast.js';
import { code } from '../hover/markdown.js';
import { textOf } from '../interpret/source.js';
import { unitOf } from '../interpret/units.js';
import { commentAbout } from '../tree/comments.js';

type Token = LexerResult['tokens'][number];

/** What may be given to a cabinet in a line of a job, and which of it stands at the cursor. */
export interface Signature {
  /** `Periodicals(wide = 600, high = 720)`. */
  readonly label: string;
  readonly comment: string | undefined;
  readonly parameters: readonly {
    /** Offsets of the parameter in the label. */
    readonly label: readonly [number, number];
    /** Markdown. */
    readonly about: string;
  }[];
  /** Its number; absent behind the last one. */
  readonly active: number | undefined;
}

/**
 * The signature of the cabinet in whose brackets a text ends.
 * @param tokens those of the text before the cursor: what stands behind it need not be readable
 * @param find the cabinet of a name that the file sees
 */
export function signatureAt(tokens: readonly Token[], find: (name: string) => unknown): Signature | undefined {
  const open = openBracket(tokens);
  const [of, name] = [tokens[(open ?? 0) - 2], tokens[(open ?? 0) - 1]];
  if (open === undefined || of?.image !== 'of' || name === undefined) return undefined;
  const cabinet = find(name.image);
  if (!isCabinet(cabinet)) return undefined;
  const parameters = cabinet.items.filter(isParameter).filter((one) => one.name !== undefined);
  return { ...labelled(cabinet, parameters), active: activeOf(parameters, tokens.slice(open + 1)) };
}

/** The bracket that is open at the end; a brace between them closes all. */
function openBracket(tokens: readonly Token[]): number | undefined {
  let depth = 0;
  let inner: number | undefined;
  for (let at = tokens.length - 1; at >= 0; at -= 1) {
    const image = tokens[at]?.image;
    if (image === '{' || image === '}') break;
    if (image === ')') depth += 1;
    if (image !== '(') continue;
    if (depth > 0) depth -= 1;
    else if (tokens[at - 2]?.image === 'of') inner ??= at;
  }
  return inner;
}

function labelled(
  cabinet: Cabinet,
  parameters: readonly Parameter[],
): Pick<Signature, 'label' | 'comment' | 'parameters'> {
  const unit = unitOf(cabinet.$container as File);
  const written = parameters.map(
    (parameter) => `${parameter.name} = ${parameter.value ? textOf(parameter.value) : '…'}`,
  );
  let at = `${cabinet.name}(`.length;
  const labels = written.map((text): [number, number] => {
    const label: [number, number] = [at, at + text.length];
    at += text.length + ', '.length;
    return label;
  });
  return {
    label: `${cabinet.name}(${written.join(', ')})`,
    comment: commentAbout(cabinet),
    parameters: parameters.map((parameter, index) => ({
      label: labels[index] as [number, number],
      about: aboutParameter(parameter, unit),
    })),
  };
}

function aboutParameter(parameter: Parameter, unit: string): string {
  const value = parameter.value ? code(textOf(parameter.value)) : 'nothing';
  const what = parameter.count ? 'a count' : `a length, in ${unit} unless it is written with its unit`;
  return [commentAbout(parameter), `${value} if it is not given; ${what}`]
    .filter((line) => line !== undefined)
    .join('\n\n');
}

/** The one whose name is begun or written in front of the cursor; else the first that is not given yet. */
function activeOf(parameters: readonly Parameter[], given: readonly Token[]): number | undefined {
  const names: (string | undefined)[] = [undefined];
  let depth = 0;
  given.forEach(({ image }, index) => {
    if (image === '(') depth += 1;
    else if (image === ')') depth -= 1;
    else if (image === ',' && depth === 0) names.push(undefined);
    else if (given[index + 1]?.image === '=') names[names.length - 1] = image;
  });
  const here = names.at(-1) ?? given.at(-1)?.image;
  const named = parameters.findIndex(({ name }) => name === here);
  if (named >= 0) return named;
  const begun = parameters.findIndex(({ name }) => here !== undefined && /^\p{L}/u.test(here) && name.startsWith(here));
  const open = parameters.findIndex(({ name }) => !names.includes(name));
  const active = begun >= 0 ? begun : open;
  return active >= 0 ? active : undefined;
}
