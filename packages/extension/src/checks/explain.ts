import { commands, type ExtensionContext, window } from 'vscode';
import { pageOf } from './pages.js';

interface Described {
  readonly properties: Readonly<Record<string, { readonly description?: string }>>;
}

/** Asks which check, unless one is named, and shows its page as it is meant to be read. */
export async function explainCheck({ extension }: ExtensionContext, named?: unknown): Promise<void> {
  const checks = checksOf(extension.packageJSON);
  const check = typeof named === 'string' ? named : await ask(checks);
  if (check !== undefined) await commands.executeCommand('markdown.showPreview', pageOf(check));
}

async function ask(checks: Readonly<Record<string, string>>): Promise<string | undefined> {
  const picks = Object.entries(checks).map(([label, detail]) => ({ label, detail }));
  const picked = await window.showQuickPick(picks, {
    title: 'Explain a Check',
    placeHolder: 'Which check? Its name stands behind each finding.',
    matchOnDetail: true,
  });
  return picked?.label;
}

/** What each check finds, by its name: the setting `severity` lists them all. */
function checksOf(manifest: { contributes: { configuration: { properties: Record<string, unknown> } } }) {
  const { properties } = manifest.contributes.configuration.properties['dryfit.severity'] as Described;
  return Object.fromEntries(Object.entries(properties).map(([name, { description = '' }]) => [name, description]));
}
