import { type Material, Rational, say } from '@dryfit/engine';
import { GrammarUtils } from 'langium';
import { isPartLine } from '../generated/ast.js';
import type { Case, Cure, Fix } from './fix.js';
import { titled } from './support/facts.js';
import { UNUSED } from './support/follow.js';
import { itemAt } from './support/place.js';

/**
 * Makes a part of another material: of the same as the one it meets in a mitre, of a thicker one, of a stiffer one under
 * a load, or of a sheet in place of solid wood.
 */
export const otherMaterial: Fix = {
  name: 'other-material',
  codes: [
    'mitre-unequal',
    'slot-breaks-through',
    'thin-wall',
    'mitre-no-room',
    'back-pinched',
    'shelf-sags',
    'load-not-reckoned',
    'wood-moves',
  ],
  mayFollow: UNUSED,
  most: 2,
  *offer(about): Iterable<Cure> {
    const parts = (about.finding.about.parts ?? []).flatMap(
      (id) => about.result?.fit.parts.find((part) => part.id === id) ?? [],
    );
    for (const part of parts) {
      const line = itemAt(about, part.source);
      const word = isPartLine(line) ? GrammarUtils.findNodeForProperty(line.$cstNode, 'material') : undefined;
      if (!isPartLine(line) || !word) continue;
      for (const material of materials(
        about,
        part.material,
        parts.map((other) => other.material),
      )) {
        const names = line.parts.map(({ name }) => name).join(', ');
        yield {
          title: titled(say`Make ${names} of ${material}`, about.unit),
          edits: [{ uri: about.document.uri.toString(), start: word.offset, end: word.end, text: material }],
        };
      }
    }
  },
};

function materials({ finding, result }: Case, now: string, beside: readonly string[]): readonly string[] {
  if (finding.code === 'mitre-unequal') return beside.filter((name) => name !== now);
  const shop = result?.spec.shop.materials;
  const thickness = shop?.get(now)?.thickness.value;
  if (!shop || !thickness) return [];
  const others = [...shop.values()].filter(({ name }) => name !== now);
  const away = (other: Material) => other.thickness.value.sub(thickness).abs();
  const nearest = (wanted: (other: Material) => boolean) =>
    others
      .filter(wanted)
      .sort((a, b) => away(a).compare(away(b)))
      .map(({ name }) => name);
  if (finding.code === 'load-not-reckoned') {
    const across = finding.data?.why === 'no stiffness across';
    const figure = across ? 'stiffnessAcross' : finding.data?.why === 'no stiffness' ? 'stiffness' : undefined;
    return figure ? nearest((other) => other[figure] !== undefined) : [];
  }
  if (finding.code === 'wood-moves') return nearest(({ movement }) => movement === undefined);
  if (finding.code === 'shelf-sags') {
    const stiff = shop.get(now)?.stiffness ?? Rational.ZERO;
    return nearest((other) => other.thickness.value.gt(thickness) || (other.stiffness ?? Rational.ZERO).gt(stiff));
  }
  const thinner = finding.code === 'back-pinched';
  return [...shop.values()]
    .filter((other) => (thinner ? other.thickness.value.lt(thickness) : other.thickness.value.gt(thickness)))
    .sort((a, b) => a.thickness.value.compare(b.thickness.value) * (thinner ? -1 : 1))
    .map(({ name }) => name);
}
