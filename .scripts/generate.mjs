// Generates the parser, the AST types and the TextMate grammar from the grammar: npm run generate
import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const cli = join(dirname(createRequire(import.meta.url).resolve('langium-cli/package.json')), 'bin/langium.js');
execFileSync(
  process.execPath,
  ['--require', join(root, '.scripts/groupby.cjs'), cli, 'generate', '--mode=production', ...process.argv.slice(2)],
  { cwd: root, stdio: 'inherit' },
);
