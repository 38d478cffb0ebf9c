import { Cancellation, interruptAndCheck, type LangiumDocument } from 'langium';
import type { CodeLensProvider } from 'langium/lsp';
import type { CodeLens, CodeLensParams } from 'vscode-languageserver-protocol';
import { type Cabinet, isCabinet, type Job } from '../generated/ast.js';
import { Lengths } from '../hover/lengths.js';
import { unitOf } from '../interpret/units.js';
import { cabinetLens, jobLens, lensPlaces } from '../lens/lenses.js';
import { fileOf } from '../scope/imports.js';
import { rangeOf } from './convert.js';
import type { JoineryServerServices } from './services.js';

/** Commands that lenses over a cabinet or a job give the client: with its file's address and its name. */
const OPEN_DRAWING = 'dryfit.openDrawing';
const OPEN_SLOT_TABLE = 'dryfit.openSlotTable';
const OPEN_PLAN = 'dryfit.openPlan';

/** Places of lenses at once; what they say when the editor shows them. */
export class JoineryCodeLensProvider implements CodeLensProvider {
  /** Of which text of a document lenses were last asked for. */
  private readonly asked = new WeakMap<LangiumDocument, number>();

  constructor(private readonly services: Pick<JoineryServerServices, 'editor' | 'joinery'>) {}

  /** A client has lenses of an earlier text of it. */
  isBehind(document: LangiumDocument): boolean {
    const asked = this.asked.get(document);
    return asked !== undefined && asked < document.textDocument.version;
  }

  provideCodeLens(document: LangiumDocument, _params: CodeLensParams): CodeLens[] {
    this.asked.set(document, document.textDocument.version);
    const { lenses, joinery } = this.services.editor.Settings.now;
    const file = fileOf(document);
    if (!lenses || !joinery || !file) return [];
    const uri = document.uri.toString();
    return lensPlaces(file).flatMap(({ start, of }) => {
      const lens = { range: rangeOf(document, { start, end: start }), data: { uri, entry: of.$containerIndex } };
      if (!isCabinet(of)) {
        if (of.name === undefined) return [lens];
        return [lens, { ...lens, command: { title: 'plan', command: OPEN_PLAN, arguments: [uri, of.name] } }];
      }
      // It stands in the same line and says the same whatever the cabinet comes to.
      const table = { title: 'slot table', command: OPEN_SLOT_TABLE, arguments: [uri, of.name] };
      return [lens, { ...lens, command: table }];
    });
  }

  /** The lens with what it says; empty if what it stood over is no more. */
  async resolve(
    document: LangiumDocument,
    lens: CodeLens,
    token = Cancellation.CancellationToken.None,
  ): Promise<CodeLens> {
    if (lens.command) return lens;
    const file = fileOf(document);
    const { entry } = (lens.data ?? {}) as { entry?: number };
    const place = file && lensPlaces(file).find(({ of }) => of.$containerIndex === entry);
    if (!place) return { ...lens, command: { title: '', command: '' } };
    const uri = document.uri.toString();
    if (!isCabinet(place.of)) return { ...lens, command: { title: await this.ofJob(place.of, token), command: '' } };
    const title = this.ofCabinet(place.of);
    return { ...lens, command: { title, command: OPEN_DRAWING, arguments: [uri, place.of.name] } };
  }

  private ofCabinet(cabinet: Cabinet): string {
    const { thickness, severity } = this.services.editor.Settings.now;
    const { result, findings } = this.services.joinery.Fits.of(cabinet, thickness);
    const told = findings.flatMap((finding) => {
      const set = severity[finding.code] ?? finding.severity;
      return set === 'off' ? [] : [{ ...finding, severity: set }];
    });
    return cabinetLens(result, told, new Lengths(unitOf(cabinet.$container)));
  }

  private async ofJob(job: Job, token: Cancellation.CancellationToken): Promise<string> {
    const { thickness } = this.services.editor.Settings.now;
    const lines = [];
    for (const line of job.lines) {
      await interruptAndCheck(token);
      const made = this.services.joinery.Fits.line(line, thickness);
      lines.push({ count: line.count, parts: made?.variant.result.fit.parts.length });
    }
    return jobLens(lines);
  }
}
