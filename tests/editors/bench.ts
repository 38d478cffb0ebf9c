import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '../house/sources.js';

/** What an editor tells of a file that it has open. */
export interface Told {
  readonly diagnostics: readonly { readonly line: number; readonly message: string }[];
  /** Text of the hover over `butt shelf`. */
  readonly hover: string;
  /** Texts of the hints in the whole file; undefined if the editor knows no hints. */
  readonly hints?: readonly string[];
}

/** A place for an editor of its own: a home without settings, a folder with a broken cabinet, the server on the path. */
export class EditorBench {
  readonly home = mkdtempSync(join(tmpdir(), 'dryfit-editor-'));
  readonly file = this.write('racks/rack.joinery', spoilt());
  private readonly answer = join(this.home, 'told.json');

  constructor() {
    this.write('racks/shop.joinery', readFileSync(join(root, 'examples/shop.joinery'), 'utf8'));
    mkdirSync(join(this.home, 'bin'));
    mkdirSync(join(this.home, 'racks/.git'));
    const server = join(root, 'packages/cli/bin/dryfit-language-server.js');
    symlinkSync(server, join(this.home, 'bin/dryfit-language-server'));
  }

  write(name: string, text: string): string {
    const path = join(this.home, name);
    mkdirSync(join(path, '..'), { recursive: true });
    writeFileSync(path, text);
    return path;
  }

  /** Runs an editor, which is to write what it was told into the file named by `TOLD`. */
  run(program: string, words: readonly string[]): Told {
    execFileSync(program, words, {
      cwd: join(this.home, 'racks'),
      env: {
        PATH: `${join(this.home, 'bin')}:${process.env.PATH}`,
        HOME: this.home,
        XDG_CONFIG_HOME: this.home,
        XDG_DATA_HOME: this.home,
        XDG_STATE_HOME: this.home,
        XDG_CACHE_HOME: this.home,
        TOLD: this.answer,
        LANG: 'C.UTF-8',
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    return JSON.parse(readFileSync(this.answer, 'utf8'));
  }

  remove = (): void => rmSync(this.home, { recursive: true, force: true });
}

/** The periodicals base with its back set in by one too few, so that no spacers make up for the shelf. */
function spoilt(): string {
  return readFileSync(join(root, 'examples/periodicals.joinery'), 'utf8').replace('set back 16', 'set back 15');
}

/** What any editor has to show of that file. */
export const wanted = {
  line: spoilt()
    .split('\n')
    .findIndex((line) => line.includes('butt shelf')),
  message: 'the setback of shelf from the rear is 21',
  hover: '49, 159, 249, 399, 479',
};
