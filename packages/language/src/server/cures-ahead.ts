import type { Finding } from '@dryfit/engine';
import { Cancellation, DocumentState, type LangiumDocument, type URI, UriUtils } from 'langium';
import type { Cures } from './cures.js';
import type { ServerDocumentBuilder } from './document-builder.js';
import type { JoineryServerServices } from './services.js';

/** How long a text has to rest before cures are sought for nobody, ms. */
const QUIET = 300;

/** Of how many findings they are sought ahead: whoever looks for a cure looks near what they have just done. */
const MOST = 5;

/**
 * Seeks cures before somebody asks for them, in the text that was last asked about: once it has been examined anew, and
 * when the editor asks by itself, for the place of the cursor. Somebody who goes to a finding and presses the key at
 * once is then answered from what is kept. A search takes some tenths of a second, and an editor that has its own next
 * question meanwhile drops the one that somebody waits for.
 */
export class CuresAhead {
  private asked: { readonly uri: URI; readonly offset: number } | undefined;
  private round = new Cancellation.CancellationTokenSource();
  /** What the round is about; another is not begun for the same. */
  private findings: readonly Finding[] | undefined;

  constructor(
    private readonly services: JoineryServerServices,
    private readonly cures: Cures,
    private readonly quiet = QUIET,
  ) {
    services.shared.workspace.DocumentBuilder.onDocumentPhase(DocumentState.Validated, ({ uri }) => {
      if (this.asked && UriUtils.equals(this.asked.uri, uri)) void this.seek().catch(() => undefined);
    });
  }

  /** Whoever asked there has the answer. */
  async around({ uri }: LangiumDocument, offset: number): Promise<void> {
    this.asked = { uri, offset };
    await this.seek();
  }

  /** Somebody asks: they have the time for themselves. */
  stop(): void {
    this.round.cancel();
    this.round = new Cancellation.CancellationTokenSource();
    this.findings = undefined;
  }

  /** Seeks the cures of what is found nearest to the place, in the place of all that is still sought. */
  private async seek(): Promise<void> {
    await new Promise((resolve) => setTimeout(resolve, this.quiet));
    if (!this.asked) return;
    const { uri, offset } = this.asked;
    const { DocumentBuilder, LangiumDocuments } = this.services.shared.workspace;
    const document = LangiumDocuments.getDocument(uri);
    const changing = (DocumentBuilder as ServerDocumentBuilder).isExpecting;
    if (!document || changing || document.state < DocumentState.Linked) return;
    const { findings } = this.services.editor.Examinations.of(document);
    if (findings === this.findings) return;
    this.stop();
    this.findings = findings;
    const { token } = this.round;
    try {
      for (const finding of nearest(findings, offset).slice(0, MOST)) await this.cures.ahead(finding, document, token);
    } catch (error) {
      // A round that came to no end may be begun again.
      if (this.findings === findings) this.findings = undefined;
      throw error;
    }
  }
}

const nearest = (findings: readonly Finding[], offset: number): readonly Finding[] =>
  [...findings].sort((a, b) => Math.abs(a.source.start - offset) - Math.abs(b.source.start - offset));
