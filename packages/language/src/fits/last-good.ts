import type { Finding, FitResult, Source } from '@dryfit/engine';
import { DocumentState, type LangiumDocument, type LangiumSharedCoreServices } from 'langium';
import { type Cabinet, isCabinet, isJob } from '../generated/ast.js';
import { type Anchor, anchorOf } from '../interpret/anchor.js';
import { fileOf } from '../scope/imports.js';
import type { Fits, Thickness } from './fits.js';
import { moved } from './moved.js';

/** What was found for a cabinet, and whether that was for an earlier text because the present one is broken. */
export interface Fitted {
  readonly result: FitResult;
  readonly stale: boolean;
}

/** The cabinets of a file as they are made: with the values written in them, and as each job of the file changes these. */
export interface FittedFile {
  /** Some of the text cannot be read. */
  readonly broken: boolean;
  /** The cabinets are those of the last text that was whole. */
  readonly stale: boolean;
  readonly cabinets: readonly { readonly result: FitResult; readonly findings: readonly Finding[] }[];
  /** Where something that is told of these cabinets stands in the texts as they are now. */
  now(source: Source): Source;
}

export interface LastGoodOptions {
  readonly isOpen: (document: LangiumDocument) => boolean;
  readonly thickness?: (() => Thickness) | undefined;
  /** False while cabinets are not to be worked out at all. */
  readonly joinery?: (() => boolean) | undefined;
}

type Made = FittedFile['cabinets'][number];

interface Kept {
  /** By the cabinet's name, with the values written in it. */
  readonly written: ReadonlyMap<string, FitResult>;
  readonly cabinets: readonly Made[];
  readonly text: string;
  /** Where each cabinet stood in that text; those that can still be read have moved since. */
  readonly stood: ReadonlyMap<Anchor, number>;
}

/**
 * Keeps what was found for the cabinets of open documents when their text was last whole, so that neither hover nor
 * drawing loses its numbers while a line is being typed. Results hold no trees; those of closed documents are let go.
 */
export class LastGood {
  private readonly kept = new Map<string, Kept>();

  constructor(
    services: LangiumSharedCoreServices,
    private readonly fits: Fits,
    private readonly options: LastGoodOptions,
  ) {
    const { DocumentBuilder } = services.workspace;
    DocumentBuilder.onDocumentPhase(DocumentState.Validated, (document) => {
      if (!options.isOpen(document)) this.kept.delete(document.uri.toString());
      else if (isWhole(document) && this.worksOut()) this.kept.set(document.uri.toString(), this.keep(document));
    });
    DocumentBuilder.onUpdate((_, deleted) => {
      for (const uri of deleted) this.kept.delete(uri.toString());
    });
  }

  /** A cabinet with the values written in it. */
  of(cabinet: Cabinet): Fitted {
    const document = cabinet.$container.$document;
    const before =
      document && !isWhole(document) ? this.kept.get(document.uri.toString())?.written.get(cabinet.name) : undefined;
    if (before) return { result: before, stale: true };
    return { result: this.fits.of(cabinet, this.options.thickness?.()).result, stale: false };
  }

  /**
   * The same without waiting: right after a keystroke, until the changed text has been checked, a cabinet that has
   * changed is told as it was before.
   */
  soon(cabinet: Cabinet): Fitted {
    const document = cabinet.$container.$document;
    if (!document || !isWhole(document) || document.state >= DocumentState.Validated) return this.of(cabinet);
    const now = this.fits.known(cabinet, this.options.thickness?.());
    if (now) return { result: now.result, stale: false };
    const before = this.known(cabinet);
    return before ? { result: before, stale: true } : this.of(cabinet);
  }

  /** What was found for a cabinet when its file was last whole; nothing is worked out for it. */
  known({ name, $container }: Cabinet): FitResult | undefined {
    return this.kept.get($container.$document?.uri.toString() ?? '')?.written.get(name);
  }

  /** All that is made of a file. */
  ofFile(document: LangiumDocument): FittedFile {
    const uri = document.uri.toString();
    const broken = !isWhole(document);
    const kept = broken ? this.kept.get(uri) : undefined;
    if (!this.worksOut()) return { broken, stale: false, cabinets: [], now: (source) => source };
    if (!kept) return { broken, stale: false, cabinets: this.made(document), now: (source) => source };
    const shift = moved(kept.text, document.textDocument.getText());
    const now = (source: Source): Source => {
      if (source.uri !== uri) return source;
      const anchor = anchorOf(source);
      const by = anchor === undefined ? 0 : (kept.stood.get(anchor) ?? anchor.offset) - anchor.offset;
      return { uri, start: shift(source.start + by), end: shift(source.end + by) };
    };
    return { broken, stale: true, cabinets: kept.cabinets, now };
  }

  private worksOut(): boolean {
    return this.options.joinery?.() ?? true;
  }

  private keep(document: LangiumDocument): Kept {
    const thickness = this.options.thickness?.();
    const cabinets = this.made(document);
    return {
      written: new Map(cabinetsOf(document).map((cabinet) => [cabinet.name, this.fits.of(cabinet, thickness).result])),
      cabinets,
      text: document.textDocument.getText(),
      stood: new Map(
        cabinets.flatMap(({ result }): [Anchor, number][] => {
          const anchor = anchorOf(result.spec.source);
          return anchor ? [[anchor, anchor.offset]] : [];
        }),
      ),
    };
  }

  private made(document: LangiumDocument): readonly Made[] {
    const thickness = this.options.thickness?.();
    const lines =
      fileOf(document)
        ?.entries.filter(isJob)
        .flatMap((job) => job.lines) ?? [];
    return [
      ...new Set<Made>([
        ...cabinetsOf(document).map((cabinet) => this.fits.of(cabinet, thickness)),
        ...lines.flatMap((line) => this.fits.line(line, thickness)?.variant ?? []),
      ]),
    ];
  }
}

const cabinetsOf = (document: LangiumDocument): readonly Cabinet[] => fileOf(document)?.entries.filter(isCabinet) ?? [];

/** True if all of the text could be read. */
export function isWhole({ parseResult }: LangiumDocument): boolean {
  return parseResult.parserErrors.length === 0 && parseResult.lexerErrors.length === 0;
}
