import type { Finding, LengthFormat, Mark } from '@dryfit/engine';
import { printText } from '../../print/length.js';
import type { SceneMark } from '../scene.js';

/** The places that findings speak of, each with the few words that stand beside it. */
export function marksOf(findings: readonly Finding[], format: LengthFormat): readonly SceneMark[] {
  const counts = new Map<string, number>();
  return findings.flatMap((finding) =>
    (finding.marks ?? []).map((mark): SceneMark => {
      const name = `mark ${finding.code} ${mark.part}`;
      const number = (counts.get(name) ?? 0) + 1;
      counts.set(name, number);
      const words = printText(mark.words, format);
      return {
        shape: `${name} ${number}`,
        label: `${words}, in ${mark.part}: ${printText(finding.message, format)}`,
        places: [finding.source, ...finding.related.map(({ source }) => source)],
        parts: [mark.part],
        ends: [mark.from, mark.to],
        words,
        box: boxOf(mark),
        severity: finding.severity,
      };
    }),
  );
}

function boxOf({ from, to }: Mark): SceneMark['box'] {
  const on = (pick: (a: number, b: number) => number): SceneMark['box']['lo'] => [
    pick(from[0], to[0]),
    pick(from[1], to[1]),
    pick(from[2], to[2]),
  ];
  return { lo: on(Math.min), hi: on(Math.max) };
}
