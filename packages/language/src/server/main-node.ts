import { startLanguageServer } from 'langium/lsp';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { diskAndClient } from './file-system.js';
import { optimiseLate } from './optimise-late.js';
import { takeRefusals } from './registrations.js';
import { createJoineryServerServices } from './services.js';
import { TextFiles } from './text-files.js';
import { nodeThread } from './thread-node.js';

optimiseLate();
const connection = createConnection(ProposedFeatures.all);
takeRefusals(connection);
const fileSystemProvider = () => diskAndClient(new TextFiles(), connection);
const { shared } = createJoineryServerServices({ connection, fileSystemProvider }, () =>
  nodeThread(`${__dirname}/later/sequence.mjs`),
);
startLanguageServer(shared);
