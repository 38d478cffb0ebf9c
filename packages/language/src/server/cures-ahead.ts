import type { Finding } from '@dryfit/engine';
import { Cancellation, DocumentState, type LangiumDocument } from 'langium';
import type { Cures } from './cures.js';
import type { ServerDocumentBuilder } from './document-builder.js';
import type { JoineryServerServices } from './services.js';

/** How long after an editor has asked by itself the cures of the rest are sought, ms. */
const QUIET = 300;

/** Of how many findings they are sought ahead: whoever looks for a cure looks near what they have just done. */
const MOST = 5;

/**
 * Seeks cures before somebody asks for them. An editor asks by itself for the place of the cursor, whenever that or the
 * findings have changed; somebody who then goes to another place and presses the key at once is answered from what is
 * kept. A search takes some tenths of a second, and an editor that has its own next question meanwhile drops the one
 * that somebody waits for.
 */
export class CuresAhead {
  private round = new Cancellation.CancellationTokenSource();

  constructor(
    private readonly services: JoineryServerServices,
    private readonly cures: Cures,
  ) {}

  /** Somebody asks: they have the time for themselves. */
  stop(): void {
    this.round.cancel();
    this.round = new Cancellation.CancellationTokenSource();
  }

  /** Seeks the cures of what is found nearest to an offset of a document, in the place of all that is still sought. */
  async seek(document: LangiumDocument, offset: number, after = QUIET): Promise<void> {
    this.stop();
    const { token } = this.round;
    await new Promise((resolve) => setTimeout(resolve, after));
    const builder = this.services.shared.workspace.DocumentBuilder as ServerDocumentBuilder;
    if (token.isCancellationRequested || builder.isExpecting || document.state < DocumentState.Linked) return;
    const { findings } = this.services.editor.Examinations.of(document);
    for (const finding of nearest(findings, offset).slice(0, MOST)) await this.cures.ahead(finding, document, token);
  }
}

const nearest = (findings: readonly Finding[], offset: number): readonly Finding[] =>
  [...findings].sort((a, b) => Math.abs(a.source.start - offset) - Math.abs(b.source.start - offset));
