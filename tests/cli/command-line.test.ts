import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  watch,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bin = join(root, 'packages/cli/bin/dryfit.js');

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'dryfit-'));
  for (const name of ['shop', 'periodicals', 'rail-base']) {
    cpSync(join(root, `examples/${name}.joinery`), join(folder, `${name}.joinery`));
  }
});
afterEach(() => {
  chmodSync(folder, 0o755);
  rmSync(folder, { recursive: true, force: true });
});

/** Runs the command line as a user would, with its output into pipes. */
function dryfit(...args: string[]): { code: number | null; out: string; err: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...args], { cwd: folder, encoding: 'utf8' });
  return { code: status, out: stdout, err: stderr };
}

const text = (name: string): string => readFileSync(join(folder, name), 'utf8');

/** A copy of the periodicals base whose first line is too near the rear of the shelf. */
function breakIt(): void {
  const broken = text('periodicals.joinery').replace('by deep5', 'by lines 60, 180, 270');
  writeFileSync(join(folder, 'broken.joinery'), broken);
}

/** Every file below a folder with its text, for comparing before and after. */
function everything(path: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (const entry of readdirSync(path, { recursive: true, withFileTypes: true })) {
    const place = join(entry.parentPath, entry.name);
    if (entry.isFile()) found[place] = readFileSync(place, 'utf8');
  }
  return found;
}

describe('dryfit check', () => {
  it('is quiet and exits with 0 on a sound cabinet', () => {
    expect(dryfit('check', 'periodicals.joinery')).toEqual({ code: 0, out: 'no findings in 1 file\n', err: '' });
  });

  it('tells place, excerpt, numbers and cure, and exits with 1', () => {
    breakIt();
    const { code, out } = dryfit('check', 'broken.joinery');
    expect(code).toBe(1);
    expect(out).toContain('error[slot-near-edge]');
    expect(out).toContain('at broken.joinery:29:3');
    expect(out).toMatch(/29 \| {3}butt shelf between lh and rh \{\n\s+\| {3}\^+/);
    // 60 less the setback of 22 is 38, less half of 65.69 leaves 5.16.
    expect(out).toContain('leaves 5.16 to the rear edge; the least is 10');
    expect(out).toContain('= cure: Move the line 60');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: no colour goes into a pipe
    expect(out).not.toMatch(/\u001b/);
  });

  it('gives the same findings as JSON', () => {
    breakIt();
    const { code, out } = dryfit('check', 'broken.joinery', '--format', 'json');
    const document = JSON.parse(out);
    expect(code).toBe(1);
    expect(document.errors).toBe(document.findings.length);
    const near = document.findings.find((finding: { code: string }) => finding.code === 'slot-near-edge');
    expect(near).toMatchObject({ severity: 'error', place: { file: 'broken.joinery', line: 29 } });
    const schema = JSON.parse(readFileSync(join(root, 'packages/output/schema/findings.schema.json'), 'utf8'));
    expect(new Ajv2020({ strict: false }).validate(schema, document)).toBe(true);
  });

  it('exits with 0 on warnings alone, and with 1 if it is to be strict', () => {
    const loud = text('rail-base.joinery').replace(/ +allow groove-shows.*\n/, '');
    writeFileSync(join(folder, 'loud.joinery'), loud);
    expect(dryfit('check', 'loud.joinery').code).toBe(0);
    expect(dryfit('check', 'loud.joinery', '--strict').code).toBe(1);
  });

  it.each([
    ['a file that is not there', ['check', 'nowhere.joinery'], /cannot read nowhere\.joinery/],
    ['another kind of file', ['check', 'notes.txt'], /notes\.txt is not a \.joinery file/],
    ['bytes that are no text', ['check', 'binary.joinery'], /not a text file/],
    ['text in another encoding', ['check', 'latin.joinery'], /not UTF-8/],
    ['an unknown option', ['check', '--loud'], /unknown option/],
    ['an unknown format', ['check', '--format', 'xml'], /text, json/],
    ['an unknown command', ['dance'], /unknown command/],
    ['a part that is not there', ['explain', 'periodicals.joinery', 'door'], /no part or joint called door/],
    ['a denominator without inches', ['check', 'periodicals.joinery', '--denominator', '32'], /--units in/],
  ])('exits with 2 and says why on %s', (_, args, message) => {
    writeFileSync(join(folder, 'notes.txt'), 'notes');
    writeFileSync(join(folder, 'binary.joinery'), new Uint8Array([0, 1, 2, 0]));
    writeFileSync(join(folder, 'latin.joinery'), new Uint8Array([0x63, 0xe4, 0x62]));
    const { code, err } = dryfit(...args);
    expect(code).toBe(2);
    expect(err).toMatch(message);
    expect(err).not.toMatch(/^\s+at /m);
  });

  it('examines the files that can be read beside one that cannot', () => {
    breakIt();
    writeFileSync(join(folder, 'binary.joinery'), new Uint8Array([0, 1]));
    const { code, out, err } = dryfit('check', '.');
    expect(code).toBe(2);
    expect(err).toContain('binary.joinery');
    expect(out).toContain('slot-near-edge');
  });

  it('does not walk in circles', () => {
    mkdirSync(join(folder, 'deep'));
    symlinkSync(folder, join(folder, 'deep/again'));
    expect(dryfit('check', '.')).toMatchObject({ code: 0, out: 'no findings in 3 files\n' });
  });

  it('prints inches with what rounding lost', () => {
    breakIt();
    const { out } = dryfit('check', 'broken.joinery', '--units', 'in', '--denominator', '32');
    expect(out).toMatch(/the slot 1 1\/2.* is 2 19\/32/);
    expect(out).toMatch(/lost/);
  });

  it('ends quietly when its reader has seen enough', async () => {
    const child = spawn(process.execPath, [bin, 'check', join(root, 'examples')], { cwd: folder });
    let err = '';
    child.stderr.on('data', (data) => {
      err += data;
    });
    child.stdout.once('data', () => child.stdout.destroy());
    const code = await new Promise((resolve) => child.once('close', resolve));
    expect(err).toBe('');
    expect([0, 1]).toContain(code);
  });
});

describe('dryfit build', () => {
  it('writes every table of every variant and job, the same each time, and a fit.json that keeps to its schema', () => {
    expect(dryfit('build', 'periodicals.joinery', '--out', 'tables').code).toBe(0);
    const first = everything(join(folder, 'tables'));
    expect(readdirSync(join(folder, 'tables')).sort()).toEqual([
      'Periodicals',
      'Periodicals-wide-450-deep-320',
      'dryfit-build.json',
      'job-Library',
    ]);
    const schema = JSON.parse(readFileSync(join(root, 'packages/output/schema/fit.schema.json'), 'utf8'));
    const validate = new Ajv2020({ strict: false }).compile(schema);
    for (const [path, json] of Object.entries(first)) {
      if (path.endsWith('fit.json'))
        expect([path, validate(JSON.parse(json)), validate.errors]).toEqual([path, true, null]);
    }
    const csv = text('tables/job-Library/slots.csv');
    expect(csv).toContain('48,158,248,398,478');
    for (const table of ['slots', 'spacers', 'stops', 'cuts', 'parts']) {
      expect(text(`tables/Periodicals/${table}.md`)).toContain('Isolate the machine before changing');
      expect(text(`tables/Periodicals/${table}.csv`)).toContain('Isolate the machine before changing');
    }
    expect(dryfit('build', 'periodicals.joinery', '--out', 'tables').code).toBe(0);
    expect(everything(join(folder, 'tables'))).toEqual(first);
  });

  it('writes nothing with errors, and marks every table when it is to write all the same', () => {
    breakIt();
    expect(dryfit('build', 'broken.joinery', '--out', 'tables')).toMatchObject({ code: 1, out: '' });
    expect(existsSync(join(folder, 'tables'))).toBe(false);
    expect(dryfit('build', 'broken.joinery', '--out', 'tables', '--with-errors').code).toBe(1);
    const tables = Object.entries(everything(join(folder, 'tables'))).filter(([path]) => /\.(md|csv)$/.test(path));
    expect(tables.length).toBeGreaterThan(10);
    for (const [path, table] of tables) {
      if (table.split('\n').filter(Boolean).length > 1) expect([path, /error/i.test(table)]).toEqual([path, true]);
    }
  });

  it('leaves all as it was when a file is in the way', () => {
    dryfit('build', 'periodicals.joinery', '--out', 'tables');
    rmSync(join(folder, 'tables/Periodicals/slots.md'));
    mkdirSync(join(folder, 'tables/Periodicals/slots.md'));
    const before = everything(join(folder, 'tables'));
    const wider = text('periodicals.joinery').replace('high = 720', 'high = 700');
    writeFileSync(join(folder, 'periodicals.joinery'), wider);
    const { code, err } = dryfit('build', 'periodicals.joinery', '--out', 'tables');
    expect(code).toBe(2);
    expect(err).toContain('nothing was written');
    expect(everything(join(folder, 'tables'))).toEqual(before);
  });

  it('leaves no half of a table when it is interrupted while it writes', async () => {
    dryfit('build', 'periodicals.joinery', '--out', 'whole');
    const whole = readdirSync(join(folder, 'whole'), { recursive: true }).sort();
    mkdirSync(join(folder, 'tables'));
    const child = spawn(process.execPath, [bin, 'build', 'periodicals.joinery', '--out', 'tables'], { cwd: folder });
    // The first thing to happen in the folder is that the files to come are put down under other names.
    const watcher = watch(join(folder, 'tables'), () => {
      child.kill('SIGINT');
      watcher.close();
    });
    const signal = await new Promise((resolve) => child.once('close', (_, ended) => resolve(ended)));
    watcher.close();
    // Where the machine is quick the build may have ended before the signal came.
    expect(['SIGINT', null]).toContain(signal);
    expect(readdirSync(join(folder, 'tables'), { recursive: true }).sort()).toEqual(whole);
  });

  it('ends by the signal only when the work is done, and does nothing after it', () => {
    const script = `
      import { writeFileSync } from 'node:fs';
      import { stat } from 'node:fs/promises';
      import { uninterrupted } from ${JSON.stringify(pathToFileURL(join(root, 'packages/cli/dist/uninterrupted.js')).href)};
      await stat('.');
      await uninterrupted(() => {
        process.kill(process.pid, 'SIGINT');
        writeFileSync('done', '');
      });
      writeFileSync('after', '');`;
    const { signal, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', script], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect([signal, stderr]).toEqual(['SIGINT', '']);
    expect([existsSync(join(folder, 'done')), existsSync(join(folder, 'after'))]).toEqual([true, false]);
  });

  it('follows no link out of its folder', () => {
    mkdirSync(join(folder, 'tables'));
    mkdirSync(join(folder, 'elsewhere'));
    symlinkSync(join(folder, 'elsewhere'), join(folder, 'tables/Periodicals'));
    expect(dryfit('build', 'periodicals.joinery', '--out', 'tables').code).toBe(2);
    expect(readdirSync(join(folder, 'elsewhere'))).toEqual([]);
  });

  it('works from nominal thickness when told to', () => {
    dryfit('build', 'periodicals.joinery', '--out', 'measured');
    dryfit('build', 'periodicals.joinery', '--out', 'nominal', '--thickness', 'nominal');
    expect(text('measured/Periodicals/parts.csv')).toContain('564.6');
    expect(text('nominal/Periodicals/parts.csv')).not.toContain('564.6');
    expect(text('nominal/Periodicals/parts.csv')).toMatch(/,564,/);
  });

  it('keeps a cell that a spreadsheet would run from being run', () => {
    const bare = text('periodicals.joinery').replace(
      'flush front\n  }\n}',
      'flush front\n    connect none "=HYPERLINK(1)"\n  }\n}',
    );
    writeFileSync(join(folder, 'bare.joinery'), bare);
    expect(dryfit('build', 'bare.joinery', '--out', 'tables').code).toBe(0);
    for (const [path, csv] of Object.entries(everything(join(folder, 'tables')))) {
      if (path.endsWith('.csv')) expect([path, /(^|,|\n)"?[=+@]/.test(csv)]).toEqual([path, false]);
    }
  });
});

describe('dryfit explain', () => {
  it('adds a size up from the facts that give it, and tells where the slots are', () => {
    const { code, out } = dryfit('explain', 'periodicals.joinery', 'shelf');
    expect(code).toBe(0);
    expect(out).toContain('width: 564.6 mm');
    expect(out).toContain('48, 158, 248, 398, 478');
    const depth = out.split('\n\n').find((block) => block.startsWith('depth: 538 mm')) ?? '';
    const terms = [...depth.matchAll(/^\s*([+-]) (\d+(?:\.\d+)?) {2}/gm)];
    expect(terms.reduce((sum, [, sign, size]) => sum + (sign === '-' ? -1 : 1) * Number(size), 0)).toBe(538);
  });
});

describe('dryfit format', () => {
  it('tells what it would change, changes it, keeps permissions, and is then content', () => {
    const file = join(folder, 'periodicals.joinery');
    const neat = text('periodicals.joinery');
    writeFileSync(file, neat.replace('  parameter wide = 600', '      parameter   wide=600'));
    chmodSync(file, 0o640);
    expect(dryfit('format', 'periodicals.joinery', '--check')).toMatchObject({
      code: 1,
      out: expect.stringContaining('would change periodicals.joinery'),
    });
    expect(dryfit('format', 'periodicals.joinery').code).toBe(0);
    expect(text('periodicals.joinery')).toBe(neat);
    expect(statSync(file).mode & 0o777).toBe(0o640);
    expect(dryfit('format', '.', '--check').code).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(['periodicals.joinery', 'rail-base.joinery', 'shop.joinery']);
  });
});
