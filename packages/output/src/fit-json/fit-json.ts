import { countConnectors, type Finding, type FitResult, type LengthFormat } from '@dryfit/engine';
import { type Batch, cabinetLabel, type Item } from '../batch.js';
import { type Found, findingJson, gatherFindings } from '../findings/found.js';
import { type Locate, placeOf } from '../place.js';
import { printText } from '../print/length.js';
import { byPart, byText } from '../print/order.js';
import { jointJson } from './joint.js';
import { exact, known } from './lengths.js';
import { partJson } from './part.js';
import type { CabinetJson, FitJson } from './schema.js';

/**
 * What fit.json holds, as the published schema (version 1) describes it. Sorted throughout, so that the order
 * of statements in a file changes nothing. `found` is everything found in the file; `format` is for the sentences
 * of findings only.
 */
export function fitJson(
  kind: 'cabinet' | 'job',
  batch: Batch,
  found: readonly Found[],
  locate: Locate,
  format: LengthFormat,
): FitJson {
  return {
    format: 'dryfit-fit',
    version: 1,
    title: printText(batch.title, format),
    kind,
    errors: batch.errors,
    findings: gatherFindings(found, locate).map((one) => findingJson(one, locate, format)),
    cabinets: batch.items.map((item) => cabinetJson(item, locate, format)).sort((a, b) => byText(a.id, b.id)),
  };
}

/** fit.json as text: two spaces a level, a line end at the end. */
export function fitJsonText(document: FitJson): string {
  return `${JSON.stringify(document, undefined, 2)}\n`;
}

/** A cabinet's stable id: its name and the parameters given for it, lengths in mm. */
export function cabinetId(result: FitResult): string {
  const given = result.fit.parameters
    .filter((parameter) => parameter.overridden)
    .map((parameter) => `${parameter.name}=${parameter.value}`)
    .sort(byText);
  return given.length === 0 ? result.fit.name : `${result.fit.name}(${given.join(', ')})`;
}

function cabinetJson(item: Item, locate: Locate, format: LengthFormat): CabinetJson {
  const { result, count } = item;
  const { fit } = result;
  const parts = [...fit.parts].sort(byPart);
  const firstOf = new Map<number, string>();
  for (const part of parts) if (!firstOf.has(part.same)) firstOf.set(part.same, part.id);
  const { outside } = fit;
  return known<CabinetJson>({
    id: cabinetId(result),
    name: fit.name,
    count,
    place: placeOf(fit.source, locate),
    parameters: [...fit.parameters]
      .sort((a, b) => byText(a.name, b.name))
      .map(({ name, overridden, value, count: plain }) =>
        plain ? { name, overridden, number: value.toString() } : { name, overridden, length: exact(value) },
      ),
    thickness: fit.thickness,
    milled: fit.milled,
    outside: outside && { width: exact(outside.x), depth: exact(outside.y), height: exact(outside.z) },
    parts: parts.map((part) => partJson(result, part, firstOf.get(part.same) ?? part.id, locate)),
    joints: [...fit.joints].sort((a, b) => byText(a.id, b.id)).map((joint) => jointJson(joint, locate)),
    connectors: countConnectors(item.result.fit).map(({ connector, count: each }) => ({
      connector: connector.name,
      each,
      needed: each * count,
    })),
    allowed: findingsOf(result.silenced, result, locate, format),
  });
}

function findingsOf(findings: readonly Finding[], result: FitResult, locate: Locate, format: LengthFormat) {
  const cabinets = [cabinetLabel(result.fit)];
  return gatherFindings(
    findings.map((finding) => ({ finding, cabinets })),
    locate,
  ).map((found) => findingJson(found, locate, format));
}
