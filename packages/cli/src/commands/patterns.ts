import { type LengthFormat, type OwnPattern, type PatternChoice, patternsFor, type Text } from '@dryfit/engine';
import { countFindings, gatherFindings, plural, printText, visible } from '@dryfit/output';
import { examineFiles } from '../examine.js';
import { findFiles } from '../input/find.js';
import { CLEAN, ERRORS, type Io, MISUSE } from '../io.js';
import { type FindingOptions, lengthFormat } from '../options.js';
import { variants } from '../variants.js';

/** Prints which fixed patterns serve every joint of the cabinets in files and folders. */
export async function patterns(paths: readonly string[], options: FindingOptions, io: Io): Promise<number> {
  const { files, unreadable } = findFiles(paths.length === 0 ? ['.'] : paths, io.cwd);
  const { examination, failed } = await examineFiles(files, options, io);
  const problems = [...unreadable, ...failed];
  for (const problem of problems) io.err.write(`dryfit: ${visible(problem)}\n`);
  const format = lengthFormat(options, examination.units);
  const specs = variants(examination).map(({ result }) => result.spec);
  io.out.write(wordsOf(await patternsFor(specs), format));
  const { errors } = countFindings(gatherFindings(examination.found, examination.locate));
  if (errors > 0)
    io.err.write(`dryfit: ${plural(errors, 'error')} found; what has errors may be served otherwise once mended\n`);
  if (problems.length > 0) return MISUSE;
  return errors > 0 ? ERRORS : CLEAN;
}

function wordsOf({ joints, fewest, atLeast, more, kept, unserved }: PatternChoice, format: LengthFormat): string {
  if (joints.length === 0) return 'no joint has connectors, so no pattern is needed\n';
  const served = joints.length - unserved.length;
  const bound = fewest.length === atLeast ? 'and fewer do not' : `and fewer than ${atLeast} do not`;
  const lines = [
    `${plural(fewest.length, 'pattern')} ${fewest.length === 1 ? 'serves' : 'serve'} ${plural(served, 'joint')} of ${joints.length}, ${bound}; ${kept} stay as they are written:`,
    ...fewest.map((pattern) => `  ${named(pattern, format)}: ${plural(pattern.serves.length, 'joint')}`),
  ];
  if (more.length > 0) {
    lines.push('', 'one more of these lets more joints stay as they are written:');
    for (const { pattern, keeps } of more) lines.push(`  ${named(pattern, format)}: ${plural(keeps, 'joint')} more`);
  }
  if (unserved.length > 0) {
    lines.push('', 'served by none of them:');
    for (const { cabinet, statement } of unserved) lines.push(`  ${visible(`${cabinet}: ${statement}`)}`);
  }
  return `${lines.join('\n')}\n`;
}

function named({ name, lines }: OwnPattern, format: LengthFormat): string {
  const list: Text = lines.flatMap((line, i): Text => (i === 0 ? [line] : [', ', line]));
  return `${name === undefined ? 'lines' : visible(name)} ${printText(list, format)}`;
}
