import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Rational, type Spec } from '@dryfit/engine';
import { createJoineryServices, examineFiles } from '@dryfit/language';
import { EmptyFileSystem, URI } from 'langium';
import { EXAMPLES } from '../../support/examples.js';

/** Cabinets as text, and the same cabinets as data for whoever writes them in another language. */
export interface Content {
  readonly head: string;
  readonly cabinets: readonly { readonly text: string; readonly spec: Spec; readonly entities: number }[];
}

export const SHOP = readFileSync(join(EXAMPLES, 'shop.joinery'), 'utf8');
export const HEAD = 'units mm\nimport "shop.joinery"\n\n';

/** Cabinets without findings, in millimetres, of which a text is made. */
const MODELS = ['periodicals.joinery', 'display-plinth.joinery', 'bookcase.joinery'].map((name) => {
  const text = readFileSync(join(EXAMPLES, name), 'utf8');
  return /^cabinet [\s\S]*?^}\n/m.exec(text)?.[0] ?? '';
});

/** So many parts and joints, in cabinets each of its own name and width. */
export async function contentOf(entities: number): Promise<Content> {
  const counts = (await specsOf(MODELS)).map(entitiesOf);
  const texts: string[] = [];
  for (let sum = 0; sum < entities; sum += counts[(texts.length - 1) % MODELS.length] ?? 1) {
    texts.push(copyOf(MODELS[texts.length % MODELS.length] ?? '', texts.length));
  }
  const specs = await specsOf(texts);
  return {
    head: HEAD,
    cabinets: texts.map((text, i) => {
      const spec = specs[i] as Spec;
      return { text, spec, entities: entitiesOf(spec) };
    }),
  };
}

/** The text of a file with the cabinets, the last of which names a connector that there is none of. */
export function joineryOf({ head, cabinets }: Content): string {
  const texts = cabinets.map(({ text }) => text);
  return head + withSlip(texts.join('\n'), /connect biscuit20/g, 'connect biscuit99');
}

/** The same with a slip in the last place that a pattern finds. */
export function withSlip(text: string, at: RegExp, slip: string): string {
  const last = [...text.matchAll(at)].at(-1);
  if (!last) throw new Error(`nothing to slip at: ${at}`);
  return text.slice(0, last.index) + slip + text.slice(last.index + last[0].length);
}

const entitiesOf = (spec: Spec): number =>
  spec.parts.length + spec.statements.filter(({ kind }) => kind === 'joint').length;

function copyOf(cabinet: string, number: number): string {
  const [, digits = ''] = /(?:parameter wide = |width +)(\d+)/.exec(cabinet) ?? [];
  const wider = String(Number(digits) + (number % 7));
  return cabinet
    .replace(/^cabinet (\w+)/, `cabinet $1${number}`)
    .replace(/(parameter wide = |width +)\d+/, (_, words: string) => words + wider);
}

async function specsOf(cabinets: readonly string[]): Promise<readonly Spec[]> {
  const texts = new Map([
    ['memory:/shop.joinery', SHOP],
    ['memory:/all.joinery', HEAD + cabinets.join('\n')],
  ]);
  const services = createJoineryServices({
    fileSystemProvider: () =>
      Object.assign(EmptyFileSystem.fileSystemProvider(), {
        readFile: async (uri: URI) => texts.get(uri.toString()) ?? '',
      }),
  });
  const [file] = await examineFiles([URI.parse('memory:/all.joinery')], services);
  const findings = (file?.findings ?? []).filter(({ severity }) => severity === 'error');
  if (findings.length > 0) throw new Error(`cabinets to measure with have findings: ${findings[0]?.code}`);
  return (file?.cabinets ?? []).map(({ spec }) => spec);
}

/** A value of a spec as other formats have it: no places, lengths as numbers. */
export function plain(value: unknown): unknown {
  if (value instanceof Rational) return value.toNumber();
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  if ('value' in value && value.value instanceof Rational) return value.value.toNumber();
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key, one]) => one !== undefined && key !== 'source' && key !== 'enteringSource' && key !== 'silences')
      .map(([key, one]) => [key, plain(one)]),
  );
}
