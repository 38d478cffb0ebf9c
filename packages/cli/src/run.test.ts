import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { run } from './run.js';

const CABINET = `units mm
cabinet Base {
  part lh : upright of board
}
material board { thickness 18 }
`;

let cwd: string;

beforeEach(() => {
  cwd = mkdtempSync(join(tmpdir(), 'dryfit-run-'));
  writeFileSync(join(cwd, 'base.joinery'), CABINET);
});

afterEach(() => {
  rmSync(cwd, { recursive: true, force: true });
});

/** Runs the command line with streams that are, or are not, a terminal. */
async function dryfit(args: readonly string[], terminal = false, env: Record<string, string> = {}) {
  const written = { out: '', err: '' };
  const stream = (to: 'out' | 'err') => ({
    isTerminal: terminal,
    write: (text: string) => {
      written[to] += text;
    },
  });
  const uninterrupted = async <T>(work: () => T) => work();
  const code = await run(args, { out: stream('out'), err: stream('err'), cwd, env, uninterrupted });
  return { code, ...written };
}

describe('the command line', () => {
  it.each([['--help'], ['check', '--help'], ['build', '--help'], ['explain', '--help'], ['format', '--help']])(
    'helps with examples and exit codes: %s %s',
    async (...args) => {
      const { code, out, err } = await dryfit(args.filter((arg) => typeof arg === 'string'));
      expect([code, err]).toEqual([0, '']);
      expect(out).toMatch(/Exit code: 0 clean, 1 errors.*Examples:\n {2}dryfit /s);
    },
  );

  it('tells its version', async () => {
    expect(await dryfit(['--version'])).toMatchObject({ code: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) });
  });

  it.each([
    [[]],
    [['check', '--denominator', '0']],
    [['check', '--denominator', '1/32']],
    [['check', '--units', 'cm']],
    [['build']],
    [['build', 'base.joinery', 'more.joinery']],
    [['build', '.']],
    [['build', 'base.joinery', '--out', '']],
    [['explain', 'base.joinery']],
    [['explain', 'base.joinery', 'lh', '--cabinet', 'Other']],
    [['format']],
    [['check', '']],
  ])('is misused by %j', async (args) => {
    const { code, out, err } = await dryfit(args);
    expect([code, out]).toEqual([2, '']);
    expect(err).not.toBe('');
  });

  it('colours on a terminal, and says the same without', async () => {
    const plain = await dryfit(['check']);
    const coloured = await dryfit(['check'], true);
    expect(plain.code).toBe(1);
    expect(coloured.out).toContain('\u001b[31m');
    expect(stripVTControlCharacters(coloured.out)).toBe(plain.out);
    expect((await dryfit(['check'], true, { NO_COLOR: '1' })).out).toBe(plain.out);
  });

  it('takes an import of a pipe that nobody writes to for a file that cannot be read', async () => {
    execFileSync('mkfifo', [join(cwd, 'pipe.joinery')]);
    writeFileSync(join(cwd, 'base.joinery'), `import "pipe.joinery"\n${CABINET}`);
    const { code, out } = await dryfit(['check', 'base.joinery']);
    expect(code).toBe(1);
    expect(out).toContain('missing-import');
  });

  it('shows control characters of file names instead of sending them to the terminal', async () => {
    const { code, err } = await dryfit(['check', 'a\u001b[2J.joinery'], true);
    expect([code, err]).toEqual([2, 'dryfit: cannot read a␛[2J.joinery: no such file or folder\n']);
  });

  it('explains what is fixed of a cabinet that has errors', async () => {
    const { code, out, err } = await dryfit(['explain', 'base.joinery', 'lh']);
    expect(code).toBe(1);
    expect(out).toContain('width (its thickness): 18 mm');
    expect(out).toContain('height: not fixed');
    expect(err).toMatch(/base\.joinery has \d+ errors?; dryfit check base\.joinery tells them/);
  });

  it('has nothing to build in a file without cabinets', async () => {
    writeFileSync(join(cwd, 'base.joinery'), 'units mm\nmaterial board { thickness 18 }\n');
    const { code, err } = await dryfit(['build', 'base.joinery', '--out', 'tables']);
    expect([code, err]).toEqual([2, expect.stringContaining('there is nothing to build')]);
  });
});

describe('the severity of a check', () => {
  const TWO = CABINET.replace('part lh : upright of board', 'part lh : upright of board\n  parameter spare = 3');
  const severities = async (...args: string[]) => {
    writeFileSync(join(cwd, 'base.joinery'), TWO);
    const { code, out } = await dryfit(['check', '--format', 'json', ...args]);
    const found: { code: string; severity: string }[] = JSON.parse(out).findings;
    return { code, found: found.map(({ code, severity }) => `${code} ${severity}`) };
  };

  it('is what the house says, and an error is not turned off', async () => {
    const plain = await severities();
    expect(plain.code).toBe(1);
    expect(plain.found).toContain('never-used warning');
    const errors = plain.found.filter((one) => one.endsWith(' error')).map((one) => one.split(' ')[0] ?? '');
    expect(errors.length).toBeGreaterThan(0);
    const milder = await severities(
      '--severity',
      'never-used=off',
      ...errors.flatMap((code) => ['--severity', `${code}=info`]),
    );
    expect(milder.code).toBe(0);
    expect(milder.found).not.toContain('never-used warning');
    expect(milder.found).toEqual(expect.arrayContaining(errors.map((code) => `${code} info`)));
    const { code, err } = await dryfit(['check', '--severity', `${errors[0]}=off`]);
    expect([code, err]).toEqual([2, expect.stringContaining('is not turned off')]);
  });

  const milder = async () =>
    (await severities()).found
      .filter((one) => one.endsWith(' error'))
      .flatMap((one) => ['--severity', one.replace(' error', '=info')]);

  it('explain goes by it as check does', async () => {
    const args = ['explain', 'base.joinery', 'lh'];
    expect((await dryfit([...args, ...(await milder())])).code).toBe(0);
    const { code, err } = await dryfit([...args, '--severity', 'never-usd=info']);
    expect([code, err]).toEqual([2, expect.stringContaining('did you mean never-used')]);
  });

  it.each([
    ['build', 'base.joinery', '--out', 'tables'],
    ['draw', 'base.joinery', '--out', 'tables'],
  ])('%s tells findings by it, and makes nothing of what cannot be made', async (...args) => {
    const { code, err } = await dryfit([...args, ...(await milder())]);
    expect(code).toBe(1);
    expect(err).not.toContain('error[');
    expect(err).toContain('however mildly they are told');
    expect(existsSync(join(cwd, 'tables'))).toBe(false);
    expect((await dryfit([...args, '--severity', 'never-usd=info'])).code).toBe(2);
  });

  it.each(['never-usd=info', 'never-used=loud', 'never-used', '=info'])(
    '%s is refused with what is wrong',
    async (words) => {
      const { code, err } = await dryfit(['check', '--severity', words]);
      expect([code, err]).toEqual([2, expect.stringMatching(/did you mean never-used|error, warning, info, off/)]);
    },
  );
});
