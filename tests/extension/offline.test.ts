import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { extension } from './manifest.js';

/** What code that talks to others has to write, minified or not. */
const talk: Readonly<Record<string, RegExp>> = {
  fetch: /(?<![\w$.])fetch\s*\(|\b(?:globalThis|self|window)\.fetch\b/,
  XMLHttpRequest: /\bXMLHttpRequest\b/,
  WebSocket: /\bWebSocket\b/,
  EventSource: /\bEventSource\b/,
  sendBeacon: /\bsendBeacon\b/,
  importScripts: /\bimportScripts\b/,
  http: /(?:require\(|from\s*|import\()\s*["'](?:node:)?(?:https?|http2|tls|dgram|dns)["']/,
  net: /(?:require\(|from\s*|import\()\s*["'](?:node:)?net["']/,
};

/**
 * The protocol library can also be spoken to over a local socket or pipe, if whoever starts the server says so on its
 * command line; the client starts it over the channel that Node opens between the two processes. Nothing else.
 */
const allowed: Readonly<Record<string, readonly string[]>> = {
  'desktop.cjs': ['net'],
  'server.cjs': ['net'],
};

const bundles = readdirSync(join(extension, 'dist'), { recursive: true, encoding: 'utf8' }).filter(
  (file) => /\.c?js$/.test(file) && !file.startsWith('tsc'),
);

test('there are bundles to look into', () => {
  expect(bundles).toEqual(expect.arrayContaining(['desktop.cjs', 'web.js', 'server.cjs', 'server-worker.js']));
});

test.each(bundles)('%s talks to nobody', (file) => {
  const code = readFileSync(join(extension, 'dist', file), 'utf8');
  const found = Object.keys(talk).filter((word) => talk[word]?.test(code));
  expect(found).toEqual(allowed[file] ?? []);
});

test.each(bundles)('%s reports nothing to a maker', (file) => {
  const code = readFileSync(join(extension, 'dist', file), 'utf8');
  expect(code).not.toMatch(/createTelemetryLogger|TelemetryReporter|appInsights/i);
});
