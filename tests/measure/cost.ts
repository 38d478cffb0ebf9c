import { type FitResult, fit as fitSpec } from '@dryfit/engine';
import { createJoineryServices, examineFiles } from '@dryfit/language';
import { EmptyFileSystem, URI } from 'langium';
import { examples, exampleText } from '../support/examples.js';
import { cabinets, type Sheet } from './cabinets.js';

/**
 * Text to findings, with the joinery and with the language alone: the same grammar, the same indexed scopes and the
 * same checks of names and imports, but no cabinet read into a spec and fitted. Rounds alternate, so that what else
 * the machine does falls on both; medians are told, and nothing here is a test. What is counted is processor time,
 * the collector's helpers included: on a machine that does other things as well, the clock tells of those.
 */
const ROUNDS = 5;
const SIZES = [100, 1000] as const;
const KINDS = ['language alone', 'with joinery'] as const;
type Kind = (typeof KINDS)[number];

const shops = new Map(['shop.joinery', 'bench.joinery'].map((name) => [`memory:/${name}`, exampleText(name)]));

/** Every round starts from new services: what an earlier round found out is not there to be used again. */
async function examined(sheets: readonly Sheet[], joinery: boolean) {
  const texts = new Map([...shops, ...sheets.map(({ name, text }): [string, string] => [`memory:/${name}`, text])]);
  const services = createJoineryServices({
    fileSystemProvider: () =>
      Object.assign(EmptyFileSystem.fileSystemProvider(), {
        readFile: async (uri: URI) => texts.get(uri.toString()) ?? '',
      }),
  });
  const uris = sheets.map(({ name }) => URI.parse(`memory:/${name}`));
  // Not part of the work: a parser learns from the first texts it reads how to look ahead.
  for (const { text } of examples()) services.joinery.parser.LangiumParser.parse(text);
  globalThis.gc?.();
  const clock = stopwatch();
  const files = await examineFiles(uris, services, { joinery });
  return { took: clock(), files };
}

/** Milliseconds of processor time since it was made. */
function stopwatch(): () => number {
  const started = process.cpuUsage();
  return () => {
    const { user, system } = process.cpuUsage(started);
    return (user + system) / 1000;
  };
}

const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0;

/** The table of what the joinery costs, as Markdown. */
export async function costOfJoinery(): Promise<string> {
  const sheets = new Map(SIZES.map((size): [number, readonly Sheet[]] => [size, cabinets(size)]));
  const times = new Map<string, number[]>();
  const fits: number[] = [];
  let results: FitResult[] = [];
  let found = 0;
  // One round more than is counted, since the first one also compiles.
  for (let round = 0; round <= ROUNDS; round++) {
    for (const size of SIZES) {
      for (const kind of round % 2 === 0 ? KINDS : [...KINDS].reverse()) {
        const { took, files } = await examined(sheets.get(size) ?? [], kind === 'with joinery');
        if (round > 0) times.set(`${kind} ${size}`, [...(times.get(`${kind} ${size}`) ?? []), took]);
        if (kind === 'with joinery') results = files.flatMap((file) => file.cabinets);
        if (kind === 'with joinery') found = files.flatMap((file) => file.findings).length;
        if (kind === 'with joinery' && results.length !== size) throw new Error(`${results.length} fits of ${size}`);
      }
    }
    globalThis.gc?.();
    const clock = stopwatch();
    for (const { spec } of results) fitSpec(spec);
    if (round > 0) fits.push(clock() / results.length);
  }

  const took = (kind: Kind, size: number): number => median(times.get(`${kind} ${size}`) ?? []);
  const spread = (kind: Kind, size: number): string => {
    const list = times.get(`${kind} ${size}`) ?? [];
    return `${Math.min(...list).toFixed(0)} to ${Math.max(...list).toFixed(0)}`;
  };
  const bytes = (size: number): number => (sheets.get(size) ?? []).reduce((sum, { text }) => sum + text.length, 0);

  const rows = SIZES.map((size) => {
    const [alone, joinery] = [took('language alone', size), took('with joinery', size)];
    return [
      `${size} (${(bytes(size) / 1000).toFixed(0)} kB)`,
      `${alone.toFixed(1)} (${spread('language alone', size)})`,
      `${joinery.toFixed(1)} (${spread('with joinery', size)})`,
      (joinery / alone).toFixed(2),
      (((joinery - alone) / size) * 1000).toFixed(0),
    ];
  });
  const growth = KINDS.map((kind) => `${kind} ${(took(kind, 1000) / took(kind, 100)).toFixed(1)}`).join(', ');
  const table = [
    ['cabinets', 'language alone, ms', 'with joinery, ms', 'ratio', 'joinery, µs a cabinet'],
    ['---', '---', '---', '---', '---'],
    ...rows,
  ]
    .map((cells) => `| ${cells.join(' | ')} |`)
    .join('\n');
  return `${table}

Processor time, medians of ${ROUNDS} rounds (least to most), text to findings, in files of ten cabinets.
The ${SIZES.at(-1)} cabinets have ${found} findings. Ten times the cabinets take so many times as long: ${growth}.
\`fit(spec)\` alone: ${(median(fits) * 1000).toFixed(0)} µs a cabinet.
`;
}
