import type { Finding, FitResult } from '@dryfit/engine';
import { createJoineryServices, type Examination, examineFiles, type Thickness } from '@dryfit/language';
import { EmptyFileSystem, URI } from 'langium';
import { examples, exampleText } from './examples.js';

/** Texts by file name: "shop.joinery". */
export type Files = Readonly<Record<string, string>>;

const [SHOP, BENCH] = ['shop.joinery', 'bench.joinery'].map(exampleText) as [string, string];

const texts = new Map<string, string>();
/** Reads whatever a test has put into `texts`. */
const services = createJoineryServices({
  fileSystemProvider: () =>
    Object.assign(EmptyFileSystem.fileSystemProvider(), {
      readFile: async (uri: URI) => {
        const text = texts.get(uri.toString());
        if (text === undefined) throw new Error(`there is no ${uri}`);
        return text;
      },
    }),
});

let folders = 0;

/** Examines one of a few files that lie in one folder, and forgets them again. */
export async function examineOne(name: string, files: Files, thickness?: Thickness): Promise<Examination> {
  const folder = `memory:/${folders++}/`;
  for (const [file, text] of Object.entries(files)) texts.set(folder + file, text);
  const [examined] = await examineFiles([URI.parse(folder + name)], services, { thickness });
  const { LangiumDocuments, DocumentBuilder } = services.shared.workspace;
  const mine = LangiumDocuments.all
    .map((document) => document.uri)
    .filter((uri) => uri.toString().startsWith(folder))
    .toArray();
  await DocumentBuilder.update([], mine);
  for (const file of Object.keys(files)) texts.delete(folder + file);
  if (!examined) throw new Error(`${name} was not examined`);
  return examined;
}

export interface Read {
  readonly results: readonly FitResult[];
  readonly findings: readonly Finding[];
}

/** Everything a text comes to that stands alone, or imports the examples' shop. */
export async function examineText(text: string, thickness?: Thickness): Promise<Read> {
  const files = { 'shop.joinery': SHOP, 'bench.joinery': BENCH, 'text.joinery': text };
  const { cabinets, jobs, findings } = await examineOne('text.joinery', files, thickness);
  return { results: [...cabinets, ...jobs.flatMap((job) => job.lines.map(({ result }) => result))], findings };
}

/**
 * The one cabinet of a text. Its findings are what is wrong with the cabinet; a text that cannot be read as it is
 * written is a mistake in the test, and throws.
 */
export async function fitText(text: string, thickness?: Thickness): Promise<FitResult> {
  const { results, findings } = await examineText(text, thickness);
  const [result] = results;
  if (!result) throw new Error(`no cabinet in the text; ${findings.map(({ code }) => code)}`);
  readable(result, findings, text);
  return result;
}

/** The examples' files, some of them with another text. */
const exampleFiles = (changed: Files): Files => ({
  ...Object.fromEntries(examples().map(({ name, text }) => [name, text])),
  ...changed,
});

/** An example file and what it says, perhaps with other texts in place of some of the examples. */
export const examineExample = (name: string, changed: Files = {}): Promise<Examination> =>
  examineOne(name, exampleFiles(changed));

/** A cabinet of an example file with the parameters given, as a job would make it. */
export async function fitExample(
  name: string,
  cabinet: string,
  parameters: Readonly<Record<string, number>> = {},
  changed: Files = {},
): Promise<FitResult> {
  const files = exampleFiles(changed);
  const given = Object.entries(parameters).map(([key, value]) => `${key} = ${value}mm`);
  const job = `import "${name}"\njob One { 1 of ${cabinet}${given.length > 0 ? `(${given.join(', ')})` : ''} }\n`;
  const { jobs, findings } = await examineOne('one.joinery', { ...files, 'one.joinery': job });
  const result = jobs[0]?.lines[0]?.result;
  if (!result) throw new Error(`no ${cabinet} in ${name}; ${findings.map(({ code }) => code)}`);
  return result;
}

function readable(result: FitResult, findings: readonly Finding[], text: string): void {
  const own = new Set(result.findings.map(({ code }) => code));
  const others = findings.filter(({ code, severity }) => severity === 'error' && !own.has(code));
  if (others.length === 0) return;
  const told = others.map(
    ({ code, message, source }) => `${code} at "${text.slice(source.start, source.end)}": ${message.join('')}`,
  );
  throw new Error(`${told.join('\n')}\n${text}`);
}
