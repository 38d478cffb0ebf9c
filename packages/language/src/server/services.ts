import { inject, type Module } from 'langium';
import {
  createDefaultModule,
  createDefaultSharedModule,
  type DefaultSharedModuleContext,
  DefaultTextDocumentContentProvider,
  type LangiumServices,
  type LangiumSharedServices,
  type PartialLangiumServices,
  type PartialLangiumSharedServices,
} from 'langium/lsp';
import { createJoineryCompletionParser } from '../completion/parser.js';
import { registerChecks } from '../findings/validator.js';
import { LastGood } from '../fits/last-good.js';
import { JoineryGeneratedModule, JoineryGeneratedSharedModule } from '../generated/module.js';
import { LIBRARY_SCHEME } from '../library/library.js';
import { JoineryModule, JoinerySharedModule } from '../module.js';
import type { JoineryAddedServices } from '../services.js';
import { JoineryCompletionProvider } from './completion-provider.js';
import { JoineryFormatter } from './formatter.js';
import { JoineryHoverProvider } from './hover-provider.js';
import { knowledgeOf } from './knowledge.js';
import { answerRequests } from './requests.js';
import { ClientSettings } from './settings.js';

/** What only a server has beside the language. */
export interface EditorServices {
  readonly editor: {
    readonly Settings: ClientSettings;
    /** What was found for the cabinets of open files when their text was last whole. */
    readonly LastGood: LastGood;
  };
}

/** The language's services with those of an editor. */
export type JoineryServerServices = LangiumServices & JoineryAddedServices & EditorServices;

/** One entry for each thing the editor offers. */
const JoineryServerModule: Module<JoineryServerServices, PartialLangiumServices & EditorServices> = {
  editor: {
    Settings: ({ shared }) => shared.workspace.ConfigurationProvider as ClientSettings,
    LastGood: ({ shared, joinery, editor }) =>
      new LastGood(shared, joinery.Fits, {
        isOpen: ({ uri }) => shared.workspace.TextDocuments.get(uri) !== undefined,
        thickness: () => editor.Settings.now.thickness,
        joinery: () => editor.Settings.now.joinery,
      }),
  },
  parser: {
    CompletionParser: (services) => createJoineryCompletionParser(services),
  },
  lsp: {
    CompletionProvider: (services) => new JoineryCompletionProvider(services),
    HoverProvider: (services) => new JoineryHoverProvider(knowledgeOf(services)),
    Formatter: (services) => new JoineryFormatter(services),
  },
};

const JoineryServerSharedModule: Module<LangiumSharedServices, PartialLangiumSharedServices> = {
  workspace: {
    ConfigurationProvider: (services) => new ClientSettings(services),
  },
  lsp: {
    // Lets the editor open the built-in library where a definition is in it.
    TextDocumentContentProvider: (services) => new DefaultTextDocumentContentProvider(services, LIBRARY_SCHEME),
  },
};

/** The language as a server over the connection of the context. */
export function createJoineryServerServices(context: DefaultSharedModuleContext): {
  readonly shared: LangiumSharedServices;
  readonly joinery: JoineryServerServices;
} {
  const shared = inject(
    createDefaultSharedModule(context),
    JoineryGeneratedSharedModule,
    JoinerySharedModule,
    JoineryServerSharedModule,
  );
  const joinery = inject(createDefaultModule({ shared }), JoineryGeneratedModule, JoineryModule, JoineryServerModule);
  shared.ServiceRegistry.register(joinery);
  registerChecks(joinery);
  // Made at once: what was whole is kept from the first text on.
  joinery.editor.LastGood;
  answerRequests(joinery);
  return { shared, joinery };
}
