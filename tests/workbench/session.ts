import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { fileText } from './editor.js';
import { openBeside } from './quick-input.js';
import { makeVirtualFolder, virtualFolder } from './virtual-folder/make.js';
import { type Host, startWorkbench, type Workbench } from './workbench.js';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));

export interface SessionOptions {
  /** Settings of the user, for what a folder may not set. */
  readonly user?: Readonly<Record<string, unknown>>;
  /** Settings of the folder. */
  readonly folder?: Readonly<Record<string, unknown>>;
  /** Shows the examples as a folder that lies on no disk. */
  readonly virtual?: boolean;
}

/** A workbench over a copy of the examples, for the scenarios of one block. */
export interface Session {
  readonly folder: string;
  readonly page: Page;
  /** Opens another file in a page of its own. */
  open(file: string): Promise<Page>;
  /** Brings another file to the front of the same page. */
  show(file: string): Promise<void>;
  /** Keeps a picture. */
  shot(name: string): Promise<void>;
}

/** Starts a workbench with a file open before a block's tests and ends it after them; keeps a picture of a failure. */
export function inWorkbench(host: Host, file: string, options: SessionOptions = {}): Session {
  let folder = '';
  let provider = '';
  let workbench: Workbench | undefined;
  let page: Page | undefined;
  const running = (): Workbench => {
    if (workbench === undefined) throw new Error('the workbench has not started');
    return workbench;
  };
  const shown = (): Page => {
    if (page === undefined) throw new Error('no page is open');
    return page;
  };

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'dryfit-examples-'));
    cpSync(examples, folder, { recursive: true, filter: (path) => basename(path) !== 'broken' });
    if (options.folder) {
      mkdirSync(join(folder, '.vscode'));
      writeFileSync(join(folder, '.vscode/settings.json'), JSON.stringify(options.folder));
    }
    if (options.virtual) {
      provider = mkdtempSync(join(tmpdir(), 'dryfit-virtual-'));
      await makeVirtualFolder(provider, textsOf(folder));
    }
    workbench = await startWorkbench(host, options.user, options.virtual ? [provider] : []);
    page = await workbench.open(options.virtual ? virtualFolder : folder, file);
  });

  afterEach(async ({ task }) => {
    if (task.result?.state !== 'fail' || !workbench || !page) return;
    console.error(workbench.log().slice(-4000));
    await workbench.shot(page, `failed-${host}-${task.name.replace(/\W+/g, '-').slice(0, 60)}`);
  });

  afterAll(async () => {
    await workbench?.close();
    for (const made of [folder, provider]) if (made !== '') rmSync(made, { recursive: true, force: true });
  });

  return {
    get folder() {
      return folder;
    },
    get page() {
      return shown();
    },
    open: (other) => running().open(folder, other),
    show: (other) => openBeside(shown(), join(folder, other)),
    shot: (name) => running().shot(shown(), `${host}-${name}`),
  };
}

/** The files of a flat folder, by their names. */
function textsOf(folder: string): Record<string, string> {
  const files = readdirSync(folder).filter((name) => name.includes('.joinery'));
  return Object.fromEntries(files.map((name) => [name, fileText(folder, name)]));
}
