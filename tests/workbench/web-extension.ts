import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

/** Where the page finds unpacked extensions: at the workbench's own address, which its content policy allows. */
const site = '/unpacked-extension';

/** Makes the workbench that the page is about to load take extensions from folders, as a web-only editor would. */
export async function addWebExtensions(page: Page, folders: readonly string[]): Promise<void> {
  const sites = folders.map((_, i) => `${site}-${i}`);
  await page.route(
    (url) => url.pathname.startsWith(site),
    (route) => {
      const [, at, rest] = /^[^\d]*(\d+)(.*)$/.exec(new URL(route.request().url()).pathname) ?? [];
      const path = join(folders[Number(at)] ?? '', decodeURIComponent(rest ?? ''));
      return existsSync(path) ? route.fulfill({ path }) : route.fulfill({ status: 404 });
    },
  );
  await page.route(
    (url) => url.pathname === '/',
    async (route) => {
      const response = await route.fetch();
      await route.fulfill({
        response,
        body: withExtensions(await response.text(), new URL(route.request().url()), sites),
      });
    },
  );
}

/** The workbench's start page with more extensions in its configuration. */
function withExtensions(startPage: string, { host }: URL, sites: readonly string[]): string {
  const configured = /(id="vscode-workbench-web-configuration" data-settings=")([^"]*)/;
  if (!configured.test(startPage)) throw new Error('the start page of the workbench holds no configuration');
  return startPage.replace(configured, (_, start: string, escaped: string) => {
    const configuration = JSON.parse(escaped.replaceAll('&quot;', '"').replaceAll('&amp;', '&'));
    configuration.additionalBuiltinExtensions = sites.map((path) => ({ scheme: 'http', authority: host, path }));
    return start + JSON.stringify(configuration).replaceAll('&', '&amp;').replaceAll('"', '&quot;');
  });
}
