import { Uri, type Webview } from 'vscode';

export type PageName = 'drawing' | 'slots' | 'plan';

/** The page of a panel: one script, one sheet of styles, and nothing from anywhere else. */
export function page(webview: Webview, extension: Uri, name: PageName, title: string): string {
  const at = (file: string) => webview.asWebviewUri(Uri.joinPath(extension, 'dist', 'webview', file)).toString();
  const nonce = nonceOf();
  const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src ${webview.cspSource}`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<link rel="stylesheet" href="${at('panels.css')}">
</head>
<body>
<div id="page"></div>
<script nonce="${nonce}" src="${at(`${name}.js`)}"></script>
</body>
</html>`;
}

/** The only folder a page may read. */
export const pageRoots = (extension: Uri): readonly Uri[] => [Uri.joinPath(extension, 'dist', 'webview')];

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? sign);

function nonceOf(): string {
  return [...crypto.getRandomValues(new Uint8Array(18))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
