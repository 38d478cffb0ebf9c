// Everything in the tree that a program writes: what it is called, which paths it owns, and `write(into)`, which writes
// those paths into a folder. `npm run generate` writes into the tree, .scripts/stale.mjs into a temporary folder.
import * as broken from './generators/broken.mjs';
import * as checks from './generators/checks.mjs';
import * as library from './generators/library.mjs';
import * as parser from './generators/parser.mjs';
import * as schemas from './generators/schemas.mjs';
import * as severities from './generators/severities.mjs';
import * as summaries from './generators/summaries.mjs';
import * as tables from './generators/tables.mjs';

export const generators = [parser, library, checks, summaries, broken, tables, schemas, severities];
