import { DefaultLanguageServer } from 'langium/lsp';
import type { InitializeParams, InitializeResult } from 'vscode-languageserver-protocol';
import { ACTION_KINDS } from './code-action-provider.js';

/** Langium's server, which can do some things more than it says of itself. */
export class JoineryLanguageServer extends DefaultLanguageServer {
  /** What the client can do, as it said first. */
  client: InitializeParams['capabilities'] = {};

  protected override buildInitializeResult(params: InitializeParams): InitializeResult {
    this.client = params.capabilities;
    const { capabilities, ...rest } = super.buildInitializeResult(params);
    return {
      ...rest,
      capabilities: {
        ...capabilities,
        completionProvider: { ...capabilities.completionProvider, resolveProvider: true },
        workspace: { ...capabilities.workspace, workspaceFolders: { supported: true, changeNotifications: true } },
        codeActionProvider: { codeActionKinds: [...ACTION_KINDS] },
        codeLensProvider: { resolveProvider: true },
        inlayHintProvider: { resolveProvider: true },
        selectionRangeProvider: true,
      },
    };
  }
}
