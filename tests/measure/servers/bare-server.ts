import { inject } from 'langium';
import { createDefaultModule, createDefaultSharedModule, startLanguageServer } from 'langium/lsp';
import { NodeFileSystem } from 'langium/node';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import {
  JoineryGeneratedModule,
  JoineryGeneratedSharedModule,
} from '../../../packages/language/src/generated/module.js';

/** The same grammar with none of the project's own services: what Langium does by itself, to compare with. */
const context = { connection: createConnection(ProposedFeatures.all), ...NodeFileSystem };
const shared = inject(createDefaultSharedModule(context), JoineryGeneratedSharedModule);
shared.ServiceRegistry.register(inject(createDefaultModule({ shared }), JoineryGeneratedModule));
startLanguageServer(shared);
