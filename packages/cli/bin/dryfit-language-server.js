#!/usr/bin/env node
// The language server for any editor that speaks the language server protocol over standard input and output.
import { readFileSync } from 'node:fs';

const USAGE = `Usage: dryfit-language-server [--stdio]

The language server of Dryfit for editors that start one: the protocol runs over standard input and output.
An editor starts it for files that end in .joinery.
`;
const words = process.argv.slice(2);
const channel = /^--(stdio|node-ipc|socket=\d+|pipe=.+|clientProcessId=\d+)$/;
const strange = words.find((word) => !channel.test(word));

if (words.includes('--help') || words.includes('-h')) {
  process.stdout.write(USAGE);
} else if (words.includes('--version') || words.includes('-V')) {
  const { version } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
  process.stdout.write(`${version}\n`);
} else if (strange !== undefined) {
  process.stderr.write(`dryfit-language-server: ${JSON.stringify(strange)} is no option\n\n${USAGE}`);
  process.exitCode = 2;
} else {
  if (!words.some((word) => /^--(stdio|node-ipc|socket|pipe)/.test(word))) process.argv.push('--stdio');
  await import('../dist/language-server.cjs');
}
