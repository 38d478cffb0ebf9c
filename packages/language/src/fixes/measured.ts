import { say } from '@dryfit/engine';
import { isMaterial } from '../generated/ast.js';
import { isLibrary } from '../library/library.js';
import { fileOf } from '../scope/imports.js';
import type { Cure, Fix } from './fix.js';
import { titled } from './support/facts.js';
import { documentAt } from './support/numbers.js';

/** Gives a material the line for its measured thickness, with the sold one to be written over. */
export const measured: Fix = {
  name: 'measured',
  codes: ['never-measured'],
  *offer(about): Iterable<Cure> {
    const name = about.finding.data?.material;
    const material = typeof name === 'string' ? about.result?.spec.shop.materials.get(name) : undefined;
    const document = material && documentAt(about, material.source);
    const node = fileOf(document)
      ?.entries.filter(isMaterial)
      .find((entry) => entry.name === name);
    const sold = node?.thickness[0]?.$cstNode;
    if (!document || !material || !sold || isLibrary(document.uri)) return;
    yield {
      title: titled(
        say`Write what a sheet of ${material.name} measures: measured ${sold.text}, if it does`,
        about.unit,
      ),
      edits: [{ uri: document.uri.toString(), start: sold.end, end: sold.end, text: `  measured ${sold.text}` }],
    };
  },
};
