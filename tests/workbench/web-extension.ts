import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';

/** Where the page finds the unpacked extension: at the workbench's own address, which its content policy allows. */
const site = '/unpacked-extension';

/** Makes the workbench that the page is about to load take the extension from a folder, as a web-only editor would. */
export async function addWebExtension(page: Page, folder: string): Promise<void> {
  await page.route(
    (url) => url.pathname.startsWith(`${site}/`),
    (route) => {
      const path = join(folder, decodeURIComponent(new URL(route.request().url()).pathname.slice(site.length)));
      return existsSync(path) ? route.fulfill({ path }) : route.fulfill({ status: 404 });
    },
  );
  await page.route(
    (url) => url.pathname === '/',
    async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: withExtension(await response.text(), new URL(route.request().url())) });
    },
  );
}

/** The workbench's start page with one more extension in its configuration. */
function withExtension(startPage: string, { host }: URL): string {
  const configured = /(id="vscode-workbench-web-configuration" data-settings=")([^"]*)/;
  if (!configured.test(startPage)) throw new Error('the start page of the workbench holds no configuration');
  return startPage.replace(configured, (_, start: string, escaped: string) => {
    const configuration = JSON.parse(escaped.replaceAll('&quot;', '"').replaceAll('&amp;', '&'));
    configuration.additionalBuiltinExtensions = [{ scheme: 'http', authority: host, path: site }];
    return start + JSON.stringify(configuration).replaceAll('&', '&amp;').replaceAll('"', '&quot;');
  });
}
