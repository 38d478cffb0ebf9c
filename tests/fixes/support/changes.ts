/** The lines that differ between two texts, each behind a sign, with two lines around them. */
export function changedLines(before: string, after: string): string {
  const [a, b] = [before, after].map((text) => text.replaceAll('\r\n', '\n').trimEnd().split('\n')) as [
    string[],
    string[],
  ];
  const kept = commonLines(a, b);
  const lines: { readonly sign: ' ' | '-' | '+'; readonly text: string }[] = [];
  let [i, j] = [0, 0];
  for (const [x, y] of [...kept, [a.length, b.length] as const]) {
    while (i < x) lines.push({ sign: '-', text: a[i++] ?? '' });
    while (j < y) lines.push({ sign: '+', text: b[j++] ?? '' });
    if (x < a.length) lines.push({ sign: ' ', text: a[i++] ?? '' });
    j++;
  }
  const near = (at: number): boolean => lines.slice(Math.max(0, at - 2), at + 3).some(({ sign }) => sign !== ' ');
  return lines
    .flatMap(({ sign, text }, at) => (near(at) ? [`${sign} ${text}`.trimEnd()] : near(at - 1) ? ['  …'] : []))
    .join('\n')
    .replace(/\n {2}…$/, '');
}

/** Where the longest run of lines that both have stands in each. */
function commonLines(a: readonly string[], b: readonly string[]): readonly (readonly [number, number])[] {
  const length = a.map(() => b.map(() => 0));
  const at = (i: number, j: number): number => length[i]?.[j] ?? 0;
  for (let i = a.length - 1; i >= 0; i--)
    for (let j = b.length - 1; j >= 0; j--)
      (length[i] as number[])[j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  const pairs: [number, number][] = [];
  for (let [i, j] = [0, 0]; i < a.length && j < b.length; ) {
    if (a[i] === b[j]) pairs.push([i++, j++]);
    else if (at(i + 1, j) >= at(i, j + 1)) i++;
    else j++;
  }
  return pairs;
}
