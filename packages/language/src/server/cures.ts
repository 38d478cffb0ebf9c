import type { Finding } from '@dryfit/engine';
import { type Cancellation, DocumentState, type LangiumDocument, OperationCancelled } from 'langium';
import { type CureOptions, curesOf, type Proved } from '../fixes/cures.js';
import { Trial } from '../fixes/trial.js';
import type { ServerDocumentBuilder } from './document-builder.js';
import type { JoineryLanguageServer } from './language-server.js';
import type { JoineryServerServices } from './services.js';
import { makesFiles } from './workspace-edits.js';

/**
 * Cures of findings, sought when first asked for and kept until any text or setting changes, so that of several
 * questions about a place only the first takes its time, also if it is called off meanwhile.
 */
export class Cures {
  private readonly kept = new Map<Finding, Search>();
  private trialMade: Trial | undefined;
  private isPrepared = false;

  constructor(private readonly services: JoineryServerServices) {
    services.shared.workspace.DocumentBuilder.onUpdate(() => this.clear());
    services.editor.Settings.onChange(() => this.clear());
  }

  /** Of a finding of a document; fails as called off once the token is, or a text goes on. */
  of(finding: Finding, document: LangiumDocument, token: Cancellation.CancellationToken): Promise<readonly Proved[]> {
    return this.search(finding, document).wait(token, PATIENCE);
  }

  /** The same for nobody yet: once the token is called off it is sought no further, unless somebody waits by then. */
  async ahead(finding: Finding, document: LangiumDocument, token: Cancellation.CancellationToken): Promise<void> {
    await this.search(finding, document).wait(token, 0);
  }

  private search(finding: Finding, document: LangiumDocument): Search {
    let search = this.kept.get(finding);
    if (!search || search.isLeft) {
      search = new Search((isOver) => curesOf(finding, document, this.services, this.trial, this.options(isOver)));
      this.kept.set(finding, search);
    }
    return search;
  }

  /**
   * Makes the copies ready on which changes are tried, once, and a while after an editor began to ask by itself: what
   * somebody wants to see when they press a key is then not made only when they do.
   */
  async prepare(document: LangiumDocument, after = QUIET): Promise<void> {
    if (this.isPrepared) return;
    this.isPrepared = true;
    await new Promise((resolve) => setTimeout(resolve, after));
    const options = this.options(() => false);
    // Whoever types has the time for themselves; the next question comes soon enough.
    if (options.isOver?.() || document.state < DocumentState.Linked) this.isPrepared = false;
    else await this.trial.examine(document, { edits: [] }, options);
  }

  /** Where changes are tried. */
  get trial(): Trial {
    this.trialMade ??= new Trial(this.services);
    return this.trialMade;
  }

  /** What cures are sought with. */
  options(isOver: () => boolean): CureOptions {
    const { shared, editor } = this.services;
    const { thickness, joinery } = editor.Settings.now;
    const builder = shared.workspace.DocumentBuilder as ServerDocumentBuilder;
    return {
      thickness,
      joinery,
      newFiles: makesFiles((shared.lsp.LanguageServer as JoineryLanguageServer).client),
      open: shared.workspace.LangiumDocuments.all
        .filter((document) => builder.attention.isOpen(document) && document.state >= DocumentState.Linked)
        .toArray(),
      isOver: () => builder.isExpecting || isOver(),
    };
  }

  private clear(): void {
    for (const search of this.kept.values()) search.stop();
    this.kept.clear();
  }
}

/** How long after the first question of an editor its copies are made ready, ms. */
const QUIET = 1000;

/** How long is sought on when nobody waits: an editor that calls a question off often asks it again, ms. */
const PATIENCE = 1000;

/** A search that several may wait for. */
class Search {
  private waiting = 0;
  private leftAt = performance.now();
  private patience = PATIENCE;
  private stopped = false;
  private readonly found: Promise<readonly Proved[]>;

  constructor(seek: (isOver: () => boolean) => Promise<readonly Proved[]>) {
    this.found = seek(() => this.isOver());
    this.found.catch(() => this.stop());
  }

  /** It came to no end. */
  get isLeft(): boolean {
    return this.stopped;
  }

  stop(): void {
    this.stopped = true;
  }

  /** @param patience how long it is sought on once the token is called off and nobody else waits, ms */
  async wait(token: Cancellation.CancellationToken, patience: number): Promise<readonly Proved[]> {
    if (token.isCancellationRequested) throw OperationCancelled;
    this.waiting += 1;
    try {
      return await new Promise((resolve, reject) => {
        const listening = token.onCancellationRequested(() => reject(OperationCancelled));
        this.found.then(resolve, reject).finally(() => listening.dispose());
      });
    } finally {
      this.waiting -= 1;
      this.leftAt = performance.now();
      this.patience = patience;
    }
  }

  private isOver(): boolean {
    return this.stopped || (this.waiting === 0 && performance.now() - this.leftAt >= this.patience);
  }
}
