import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  type DefaultSharedCoreModuleContext,
  inject,
  type LangiumSharedCoreServices,
  type Module,
  type PartialLangiumCoreServices,
} from 'langium';
import { Fits } from './fits/fits.js';
import { JoineryGeneratedModule, JoineryGeneratedSharedModule } from './generated/module.js';
import { Shops } from './interpret/stock/shops.js';
import { JoineryLexer } from './parser/lexer.js';
import { JoineryLexerErrorMessageProvider } from './parser/lexer-messages.js';
import { JoineryParserErrorMessageProvider } from './parser/messages.js';
import { createJoineryParser } from './parser/recovery.js';
import { JoineryValueConverter } from './parser/values.js';
import { Files } from './scope/files.js';
import { JoineryLinker } from './scope/linker.js';
import { JoineryScopeComputation } from './scope/scope-computation.js';
import { JoineryScopeProvider } from './scope/scope-provider.js';
import type { JoineryAddedServices, JoineryServices } from './services.js';
import { JoineryIndexManager } from './workspace/dependencies.js';
import { JoineryDocumentBuilder } from './workspace/document-builder.js';
import { JoineryDocumentFactory } from './workspace/document-factory.js';
import { JoineryWorkspaceManager } from './workspace/workspace-manager.js';

/** What the language puts in the place of Langium's defaults, and adds to them. */
export const JoineryModule: Module<JoineryServices, PartialLangiumCoreServices & JoineryAddedServices> = {
  parser: {
    Lexer: (services) => new JoineryLexer(services),
    LangiumParser: (services) => createJoineryParser(services),
    ValueConverter: () => new JoineryValueConverter(),
    ParserErrorMessageProvider: (services) => new JoineryParserErrorMessageProvider(() => services.Grammar),
    LexerErrorMessageProvider: () => new JoineryLexerErrorMessageProvider(),
  },
  references: {
    Linker: (services) => new JoineryLinker(services),
    ScopeComputation: () => new JoineryScopeComputation(),
    ScopeProvider: (services) => new JoineryScopeProvider(services),
  },
  joinery: {
    Files: (services) => new Files(services.shared),
    Shops: (services) => new Shops(services.joinery.Files),
    Fits: ({ joinery, shared }) => {
      const fits = new Fits(joinery.Files, joinery.Shops);
      shared.workspace.DocumentBuilder.onUpdate((_, deleted) => {
        for (const uri of deleted) {
          fits.forget(uri.toString());
          joinery.Shops.forget(uri.toString());
        }
      });
      return fits;
    },
    isImported: (services) => (uri) => (services.shared.workspace.IndexManager as JoineryIndexManager).isImported(uri),
  },
};

/** The same for services that all languages of a server share. */
export const JoinerySharedModule = {
  workspace: {
    DocumentBuilder: (services: LangiumSharedCoreServices) => new JoineryDocumentBuilder(services),
    LangiumDocumentFactory: (services: LangiumSharedCoreServices) => new JoineryDocumentFactory(services),
    IndexManager: (services: LangiumSharedCoreServices) => new JoineryIndexManager(services),
    WorkspaceManager: (services: LangiumSharedCoreServices) => new JoineryWorkspaceManager(services),
  },
};

/** The language without an editor: what the command line and the tests use. */
export function createJoineryServices(context: DefaultSharedCoreModuleContext): {
  readonly shared: LangiumSharedCoreServices;
  readonly joinery: JoineryServices;
} {
  const shared = inject(createDefaultSharedCoreModule(context), JoineryGeneratedSharedModule, JoinerySharedModule);
  const joinery = inject(createDefaultCoreModule({ shared }), JoineryGeneratedModule, JoineryModule);
  shared.ServiceRegistry.register(joinery);
  return { shared, joinery };
}
