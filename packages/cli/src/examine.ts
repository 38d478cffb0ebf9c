import { fileURLToPath } from 'node:url';
import {
  createJoineryServices,
  type ExamineOptions,
  examineFiles as examineDocuments,
  shopOfFile,
  textOfFile,
  troublesOf,
  unitsOfFile,
} from '@dryfit/language';
import { EmptyFileSystem, URI } from 'langium';
import type { Examination } from './examination.js';
import { TextFiles } from './input/file-system.js';
import { findFile } from './input/find.js';
import { Lines } from './input/lines.js';
import { shownName } from './input/name.js';
import { readText } from './input/read.js';
import { type Io, Misuse } from './io.js';
import { Progress } from './progress.js';

/** What changes the findings of files. */
type Findings = Pick<ExamineOptions, 'thickness' | 'severity'>;

/** What files say, and which of them could not be read, in words. */
export interface Examined {
  readonly examination: Examination;
  readonly failed: readonly string[];
}

/**
 * Examines files; one that cannot be read is told and the others are examined all the same.
 * @throws Misuse if a severity is asked for that a check cannot have.
 */
export async function examineFiles(
  files: readonly string[],
  { thickness, severity }: Findings,
  io: Io,
): Promise<Examined> {
  const [trouble] = troublesOf(severity ?? {});
  if (trouble !== undefined) throw new Misuse(`--severity: ${trouble}`);
  const services = createJoineryServices({ ...EmptyFileSystem, fileSystemProvider: () => new TextFiles() });
  const failed: string[] = [];
  const readable = files.filter((file) => {
    try {
      readText(file, shownName(file, io.cwd));
      return true;
    } catch (error) {
      if (!(error instanceof Misuse)) throw error;
      failed.push(error.message);
      return false;
    }
  });
  const progress = new Progress(io.err);
  progress.start(readable.length);
  const examined = await examineDocuments(
    readable.map((file) => URI.file(file)),
    services,
    { thickness, severity, onExamined: (done, of) => progress.report(done, of) },
  );
  progress.done();
  const texts = new Map<string, Lines | undefined>();
  const linesOf = (uri: string): Lines | undefined => {
    if (!texts.has(uri)) {
      const text = textOfFile(URI.parse(uri), services);
      texts.set(uri, text === undefined ? undefined : new Lines(text));
    }
    return texts.get(uri);
  };
  return {
    failed,
    examination: {
      files: readable.length,
      found: examined.flatMap(({ findings }) => findings.map((finding) => ({ finding, cabinets: [] }))),
      cabinets: examined.flatMap(({ cabinets }) => cabinets),
      jobs: examined.flatMap(({ jobs }) =>
        jobs.map(({ name, lines, orders }) => ({
          name,
          items: lines.map(({ count, result }) => ({ count, result })),
          orders,
        })),
      ),
      units: examined[0]?.units ?? 'mm',
      unitsOf: (uri) => unitsOfFile(URI.parse(uri), services),
      shop: () => {
        const [first] = readable;
        return first === undefined ? undefined : shopOfFile(URI.file(first), services);
      },
      locate: (source) => linesOf(source.uri)?.quote(source, fileName(source.uri, io.cwd)),
    },
  };
}

/**
 * Examines one file.
 * @throws Misuse if it cannot be read.
 */
export async function examineFile(file: string, options: Findings, io: Io): Promise<Examination> {
  const { examination, failed } = await examineFiles([findFile(file, io.cwd)], options, io);
  const [reason] = failed;
  if (reason !== undefined) throw new Misuse(reason);
  return examination;
}

/** A file's name as it is printed; a text of the library keeps its own. */
const fileName = (uri: string, cwd: string): string =>
  uri.startsWith('file:') ? shownName(fileURLToPath(uri), cwd) : uri;
