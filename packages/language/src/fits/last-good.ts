import type { FitResult } from '@dryfit/engine';
import { DocumentState, type LangiumDocument, type LangiumSharedCoreServices } from 'langium';
import { type Cabinet, isCabinet } from '../generated/ast.js';
import { fileOf } from '../scope/imports.js';
import type { Fits } from './fits.js';

/** What was found for a cabinet, and whether that was for an earlier text because the present one is broken. */
export interface Fitted {
  readonly result: FitResult;
  readonly stale: boolean;
}

/**
 * Keeps what was found for the cabinets of open documents when their text was last whole, so that a hover does not
 * lose its numbers while a line is being typed. Results hold no trees; those of closed documents are let go.
 */
export class LastGood {
  private readonly kept = new Map<string, ReadonlyMap<string, FitResult>>();

  constructor(
    services: LangiumSharedCoreServices,
    private readonly fits: Fits,
    isOpen: (document: LangiumDocument) => boolean,
  ) {
    const { DocumentBuilder } = services.workspace;
    DocumentBuilder.onDocumentPhase(DocumentState.Validated, (document) => {
      if (!isOpen(document)) this.kept.delete(document.uri.toString());
      else if (isWhole(document)) this.kept.set(document.uri.toString(), this.resultsOf(document));
    });
    DocumentBuilder.onUpdate((_, deleted) => {
      for (const uri of deleted) this.kept.delete(uri.toString());
    });
  }

  of(cabinet: Cabinet): Fitted {
    const document = cabinet.$container.$document;
    const before =
      document && !isWhole(document) ? this.kept.get(document.uri.toString())?.get(cabinet.name) : undefined;
    return before ? { result: before, stale: true } : { result: this.fits.of(cabinet).result, stale: false };
  }

  private resultsOf(document: LangiumDocument): ReadonlyMap<string, FitResult> {
    const cabinets = fileOf(document)?.entries.filter(isCabinet) ?? [];
    return new Map(cabinets.map((cabinet) => [cabinet.name, this.fits.of(cabinet).result]));
  }
}

/** True if all of the text could be read. */
function isWhole({ parseResult }: LangiumDocument): boolean {
  return parseResult.parserErrors.length === 0 && parseResult.lexerErrors.length === 0;
}
