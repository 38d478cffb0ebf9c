import { createGrammarConfig, inject, type Module } from 'langium';
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
import { LastGood } from '../fits/last-good.js';
import { JoineryGeneratedModule, JoineryGeneratedSharedModule } from '../generated/module.js';
import { LIBRARY_SCHEME } from '../library/library.js';
import { JoineryModule, JoinerySharedModule } from '../module.js';
import type { JoineryAddedServices } from '../services.js';
import { JoineryCodeActionProvider } from './code-action-provider.js';
import { JoineryCodeLensProvider } from './code-lens-provider.js';
import { JoineryCompletionProvider } from './completion-provider.js';
import { JoineryDefinitionProvider } from './definition-provider.js';
import { ServerDocumentBuilder } from './document-builder.js';
import { JoineryDocumentHighlightProvider } from './document-highlight-provider.js';
import { JoineryDocumentLinkProvider } from './document-link-provider.js';
import { JoineryDocumentSymbolProvider } from './document-symbol-provider.js';
import { JoineryDocumentUpdates } from './document-updates.js';
import { JoineryDocumentValidator } from './document-validator.js';
import { Examinations } from './examinations.js';
import { JoineryFileOperations } from './file-operations.js';
import { JoineryFoldingRangeProvider } from './folding-range-provider.js';
import { JoineryFormatter } from './formatter.js';
import { JoineryHoverProvider } from './hover-provider.js';
import { JoineryInlayHintProvider } from './inlay-hint-provider.js';
import { JoineryLanguageServer } from './language-server.js';
import { Plans } from './plans.js';
import { JoineryReferences } from './references.js';
import { refreshWhatDepends } from './refresh.js';
import { JoineryRenameProvider } from './rename-provider.js';
import { answerRequests } from './requests.js';
import { JoinerySemanticTokenProvider } from './semantic-token-provider.js';
import type { Thread } from './sequencing.js';
import { ClientSettings } from './settings.js';
import { settingsTakeEffect } from './settings-take-effect.js';
import { JoinerySignatureHelpProvider } from './signature-help-provider.js';
import { answerStandardRequests } from './standard-requests.js';
import { answerWorkspaceCheck } from './workspace-check.js';
import { followFolders } from './workspace-folders.js';
import { JoineryWorkspaceSymbolProvider } from './workspace-symbol-provider.js';

/** What only a server has beside the language. */
export interface EditorServices {
  readonly editor: {
    readonly Settings: ClientSettings;
    /** What was found for the cabinets of open files when their text was last whole. */
    readonly LastGood: LastGood;
    /** What is to be said of each file. */
    readonly Examinations: Examinations;
    /** In which set-ups jobs are milled. */
    readonly Plans: Plans;
  };
}

/** The language's services with those of an editor. */
export type JoineryServerServices = LangiumServices & JoineryAddedServices & EditorServices;

/** One entry for each thing the editor offers. */
const JoineryServerModule: Module<
  JoineryServerServices,
  PartialLangiumServices & { readonly editor: Omit<EditorServices['editor'], 'Plans'> }
> = {
  editor: {
    Settings: ({ shared }) => shared.workspace.ConfigurationProvider as ClientSettings,
    Examinations: (services) => new Examinations(services),
    LastGood: ({ shared, joinery, editor }) =>
      new LastGood(shared, joinery.Fits, {
        isOpen: ({ uri }) => shared.workspace.TextDocuments.get(uri) !== undefined,
        thickness: () => editor.Settings.now.thickness,
        joinery: () => editor.Settings.now.joinery,
      }),
  },
  references: {
    References: (services) => new JoineryReferences(services),
  },
  validation: {
    DocumentValidator: (services) => new JoineryDocumentValidator(services),
  },
  parser: {
    // Names may have letters beyond the English ones.
    GrammarConfig: (services) => ({ ...createGrammarConfig(services), nameRegexp: /[\p{L}\p{N}_]/u }),
    CompletionParser: (services) => createJoineryCompletionParser(services),
  },
  lsp: {
    CodeActionProvider: (services) => new JoineryCodeActionProvider(services),
    CompletionProvider: (services) => new JoineryCompletionProvider(services),
    HoverProvider: (services) => new JoineryHoverProvider(services),
    Formatter: (services) => new JoineryFormatter(services),
    InlayHintProvider: (services) => new JoineryInlayHintProvider(services),
    CodeLensProvider: (services) => new JoineryCodeLensProvider(services),
    SemanticTokenProvider: (services) => new JoinerySemanticTokenProvider(services),
    DefinitionProvider: (services) => new JoineryDefinitionProvider(services),
    DocumentHighlightProvider: (services) => new JoineryDocumentHighlightProvider(services),
    RenameProvider: (services) => new JoineryRenameProvider(services),
    DocumentSymbolProvider: () => new JoineryDocumentSymbolProvider(),
    FoldingRangeProvider: () => new JoineryFoldingRangeProvider(),
    DocumentLinkProvider: () => new JoineryDocumentLinkProvider(),
    SignatureHelp: (services) => new JoinerySignatureHelpProvider(services),
  },
};

const JoineryServerSharedModule: Module<LangiumSharedServices, PartialLangiumSharedServices> = {
  workspace: {
    ConfigurationProvider: (services) => new ClientSettings(services),
    DocumentBuilder: (services) => new ServerDocumentBuilder(services),
  },
  lsp: {
    DocumentUpdateHandler: (services) => new JoineryDocumentUpdates(services),
    LanguageServer: (services) => new JoineryLanguageServer(services),
    WorkspaceSymbolProvider: (services) => new JoineryWorkspaceSymbolProvider(services),
    FileOperationHandler: (services) => new JoineryFileOperations(services),
    // Lets the editor open the built-in library where a definition is in it.
    TextDocumentContentProvider: (services) => new DefaultTextDocumentContentProvider(services, LIBRARY_SCHEME),
  },
};

/**
 * The language as a server over the connection of the context.
 * @param startThread where plans are reckoned; with everything else if absent
 */
export function createJoineryServerServices(
  context: DefaultSharedModuleContext,
  startThread?: (settings: ClientSettings) => Thread,
): {
  readonly shared: LangiumSharedServices;
  readonly joinery: JoineryServerServices;
} {
  const shared = inject(
    createDefaultSharedModule(context),
    JoineryGeneratedSharedModule,
    JoinerySharedModule,
    JoineryServerSharedModule,
  );
  const onThread: Module<JoineryServerServices, { readonly editor: Pick<EditorServices['editor'], 'Plans'> }> = {
    editor: { Plans: (services) => new Plans(services, startThread && (() => startThread(services.editor.Settings))) },
  };
  const joinery = inject(
    createDefaultModule({ shared }),
    JoineryGeneratedModule,
    JoineryModule,
    JoineryServerModule,
    onThread,
  );
  shared.ServiceRegistry.register(joinery);
  // Made at once: what was whole is kept from the first text on.
  joinery.editor.LastGood;
  answerRequests(joinery);
  answerWorkspaceCheck(joinery);
  settingsTakeEffect(joinery);
  answerStandardRequests(joinery);
  followFolders(joinery);
  refreshWhatDepends(joinery);
  return { shared, joinery };
}
