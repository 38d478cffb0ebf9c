import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { addWebExtensions } from './web-extension.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const serverMain = join(root, '.cache/workbench/node_modules/code-server/lib/vscode/out/server-main.js');
const shots = join(root, '.cache/shots');

/** Quiet settings: nothing opens, asks or updates by itself. */
const settings = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.reduceMotion': 'on',
  'workbench.enableExperiments': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'security.workspace.trust.enabled': false,
  'telemetry.telemetryLevel': 'off',
  'chat.disableAIFeatures': true,
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'editor.minimap.enabled': false,
  'editor.accessibilitySupport': 'off',
  'git.enabled': false,
};

/** A running workbench with the packaged extension installed, and a browser to look at it. */
export interface Workbench {
  /** Opens a file of a folder, on the disk or at an address, in a page of its own and waits for its editor. */
  open(folder: string, file: string): Promise<Page>;
  /** Keeps a picture of the page in .cache/shots. */
  shot(page: Page, name: string): Promise<void>;
  /** What the server wrote so far, for a failure's report. */
  log(): string;
  close(): Promise<void>;
}

/** Where the extension runs: in Node beside the files, or in the browser alone. */
export type Host = 'node' | 'browser';

/**
 * Gives the packaged extension to an empty profile and starts the workbench on a free port.
 * @param others folders of further extensions
 */
export async function startWorkbench(
  host: Host,
  ownSettings: Readonly<Record<string, unknown>> = {},
  others: readonly string[] = [],
): Promise<Workbench> {
  if (!existsSync(serverMain))
    throw new Error('no workbench in .cache/workbench; run: node .scripts/workbench-setup.mjs');
  const home = mkdtempSync(join(tmpdir(), 'dryfit-workbench-'));
  const userData = join(home, 'user-data');
  mkdirSync(join(userData, 'User'), { recursive: true });
  writeFileSync(join(userData, 'User/settings.json'), JSON.stringify({ ...settings, ...ownSettings }));
  const env: NodeJS.ProcessEnv = { ...process.env, XDG_CONFIG_HOME: home, XDG_DATA_HOME: home, XDG_CACHE_HOME: home };
  delete env.NODE_OPTIONS;
  const profile = [
    '--server-data-dir',
    home,
    '--user-data-dir',
    userData,
    '--extensions-dir',
    join(home, 'extensions'),
  ];
  const common = [serverMain, ...profile, '--accept-server-license-terms'];
  if (host === 'node') {
    for (const [i, folder] of others.entries())
      cpSync(folder, join(home, `extensions/other-${i}`), { recursive: true });
    execFileSync(process.execPath, [...common, '--install-extension', packagedExtension(), '--force'], {
      env,
      stdio: 'pipe',
    });
  }

  // A port that the server chooses itself is nobody else's.
  const address = ['--host', '127.0.0.1', '--port', '0', '--without-connection-token'];
  const server = spawn(process.execPath, [...common, ...address, '--telemetry-level', 'off'], { env });
  let output = '';
  for (const stream of [server.stdout, server.stderr]) stream.on('data', (data) => (output += String(data)));
  const ended = once(server, 'exit').catch(() => undefined);
  const stopServer = async () => {
    server.kill('SIGTERM');
    await ended;
    // What the server had started may write a little longer.
    rmSync(home, { recursive: true, force: true, maxRetries: 20, retryDelay: 200 });
  };

  let port: number;
  let browser: Browser;
  try {
    port = await listening(server, () => output);
    browser = await launchBrowser();
  } catch (error) {
    await stopServer();
    throw new Error(`the workbench did not start:\n${output}`, { cause: error });
  }
  return {
    open: (folder, file) =>
      openFile(browser, port, folder, file, host === 'browser' ? [join(root, '.cache/package'), ...others] : []),
    async shot(page, name) {
      mkdirSync(shots, { recursive: true });
      await page.screenshot({ path: join(shots, `${name}.png`) });
    },
    log: () => output,
    async close() {
      try {
        await browser.close();
      } finally {
        await stopServer();
      }
    },
  };
}

/** Debian's Chromium, or the one that CHROMIUM names. */
export function launchBrowser(): Promise<Browser> {
  const places = [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'];
  const executablePath = places.find((place) => place !== undefined && existsSync(place));
  if (executablePath === undefined) throw new Error('no Chromium found; run: node .scripts/workbench-setup.mjs');
  const args = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking'];
  // A page that a test has rewritten comes from nowhere in Chromium's eyes, and would not reach the local server.
  const local = '--disable-features=LocalNetworkAccessChecks';
  return chromium.launch({ executablePath, args: [...args, local, '--disable-component-update', '--disable-sync'] });
}

async function openFile(
  browser: Browser,
  port: number,
  folder: string,
  file: string,
  webExtensions: readonly string[],
): Promise<Page> {
  const page = await browser.newPage({
    viewport: { width: 1440, height: 900 },
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  page.setDefaultTimeout(Number(process.env.WORKBENCH_PATIENCE ?? 60_000));
  if (webExtensions.length > 0) await addWebExtensions(page, webExtensions);
  const address = folder.startsWith('/') ? `vscode-remote://127.0.0.1:${port}${join(folder, file)}` : folder + file;
  const payload = JSON.stringify([['openFile', address]]);
  const query = new URLSearchParams({ folder, payload });
  await page.goto(`http://127.0.0.1:${port}/?${query}`);
  await page.locator('.monaco-workbench').waitFor();
  await page.locator(`.tab.active[data-resource-name="${file}"]`).waitFor();
  await page.locator('.view-lines .view-line').first().waitFor();
  return page;
}

function packagedExtension(): string {
  const cache = join(root, '.cache');
  const name = readdirSync(cache).find((entry) => /^dryfit-.*\.vsix$/.test(entry));
  if (name === undefined) throw new Error('no packaged extension in .cache; run: npm run package');
  return join(cache, name);
}

/** The port at which the server says that it listens; fails when it ends instead. */
function listening(server: ChildProcess, said: () => string): Promise<number> {
  return new Promise((resolve, reject) => {
    const look = () => {
      const port = /listening on (\d+)/.exec(said())?.[1];
      if (port !== undefined) resolve(Number(port));
    };
    server.stdout?.on('data', look);
    server.once('error', reject);
    server.once('exit', (code) => reject(new Error(`the server ended with ${code}`)));
  });
}
