import { type Page, sheetsHtml } from '@dryfit/output';
import { sheetsPdf } from './pdf.js';
import type { Written } from './write.js';

/** Pages as HTML and as PDF; nothing where there are none. */
export async function printed(path: string, title: string, pages: readonly Page[]): Promise<Written[]> {
  if (pages.length === 0) return [];
  return [
    { path: `${path}.html`, text: sheetsHtml(title, pages) },
    { path: `${path}.pdf`, text: await sheetsPdf(title, pages) },
  ];
}
