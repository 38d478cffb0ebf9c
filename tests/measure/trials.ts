import { type Contributor, figuresOf, type Result, reckon, resultsOf, type Spec, tryResults } from '@dryfit/engine';
import { createJoineryServices, examineFiles } from '@dryfit/language';
import { EmptyFileSystem, URI } from 'langium';
import { normals } from '../../packages/engine/src/tolerance/trials.js';
import { exampleText } from '../support/examples.js';

/**
 * Trials a second of everything that may be off in a cabinet, beside a plain loop over one flat function that is
 * written out for that cabinet and compiled. Both draw the same numbers in the same order and keep mean and deviation;
 * rounds alternate, processor time, medians; nothing here is a test.
 */
const ROUNDS = 7;
const SAMPLES = 20_000;
const SEED = 1;
const CABINETS = ['periodicals', 'bookcase', 'display-plinth'] as const;

async function specOf(name: string): Promise<Spec> {
  const services = createJoineryServices({
    fileSystemProvider: () =>
      Object.assign(EmptyFileSystem.fileSystemProvider(), {
        readFile: async (uri: URI) => exampleText(uri.path.replace(/^\//, '')),
      }),
  });
  const [file] = await examineFiles([URI.parse(`memory:/${name}.joinery`)], services);
  const spec = file?.cabinets[0]?.spec;
  if (!spec) throw new Error(`${name} cannot be read`);
  return spec;
}

/** Sums alone can be written out flat: curves are left out of both. */
const sumsOf = (results: readonly Result[]) => results.filter(({ adds }) => 'stack' in adds);

/** One function of one vector of draws, every sum a line of it, as if somebody had typed it for this cabinet. */
function flat(results: readonly Result[]): (samples: number, seed: number) => Float64Array {
  const places = new Map<string, number>();
  const drawn: Contributor[] = [];
  for (const { adds } of results) {
    if (!('stack' in adds)) continue;
    for (const { of } of adds.stack.terms)
      if (!places.has(of.id)) {
        places.set(of.id, drawn.length);
        drawn.push(of);
      }
  }
  const draw = drawn.map(({ plus, minus }, i) => {
    const [high, low] = [plus.toNumber(), minus.toNumber()];
    return `const v${i} = ${(high - low) / 2} + ${(high + low) / 6} * next();`;
  });
  const sums = results.map(({ adds }, i) => {
    if (!('stack' in adds)) return '';
    const terms = adds.stack.terms.map(({ of, coefficient }) => `${coefficient.toNumber()} * v${places.get(of.id)}`);
    const value = [adds.stack.shift.toNumber(), ...terms].join(' + ');
    return `{ const x = ${value}; sum[${i}] += x; squares[${i}] += x * x; }`;
  });
  const body = `const next = normals(seed);
const sum = new Float64Array(${results.length}), squares = new Float64Array(${results.length});
for (let trial = 0; trial < samples; trial++) { ${draw.join('\n')}\n${sums.join('\n')} }
for (let i = 0; i < sum.length; i++) squares[i] = Math.sqrt(Math.max(0, squares[i] / samples - (sum[i] / samples) ** 2));
return squares;`;
  const compiled = new Function('normals', 'samples', 'seed', body);
  return (samples, seed) => compiled(normals, samples, seed);
}

function processorTime(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

const median = (times: readonly number[]): number => [...times].sort((a, b) => a - b)[times.length >> 1] ?? Number.NaN;

/** A table of trials a second, as Markdown. */
export async function trialsASecond(): Promise<string> {
  const rows: string[] = [];
  for (const name of CABINETS) {
    const results = sumsOf(resultsOf(reckon(await specOf(name))));
    const plain = flat(results);
    const ours: number[] = [];
    const theirs: number[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      ours.push(processorTime(() => tryResults(results, SAMPLES, SEED)));
      theirs.push(processorTime(() => plain(SAMPLES, SEED)));
    }
    const deviations = plain(SAMPLES, SEED);
    const tried = tryResults(results, SAMPLES, SEED);
    const apart = results.map(({ id }, i) => Math.abs((tried.get(id)?.deviation ?? Number.NaN) - (deviations[i] ?? 0)));
    const widest = Math.max(...results.map(({ adds }) => figuresOf(adds).rootSumSquare.half.value));
    if (!(Math.max(...apart) < widest / 1000))
      throw new Error(`the two do not do the same: ${Math.max(...apart)} apart`);
    const [a, b] = [SAMPLES / median(ours), SAMPLES / median(theirs)];
    rows.push(`| ${name} | ${results.length} | ${thousands(a)} | ${thousands(b)} | ${(a / b).toFixed(2)} |`);
  }
  return `Cabinets tried a second, every step, flushness, place, opening and size of each from the same draws: the engine, which
takes any cabinet as data, beside a plain loop over one flat function compiled for that cabinet alone.

| cabinet | results | engine | flat function | ratio |
| --- | --- | --- | --- | --- |
${rows.join('\n')}
`;
}

const thousands = (n: number): string => `${Math.round(n / 1000)} 000`;
