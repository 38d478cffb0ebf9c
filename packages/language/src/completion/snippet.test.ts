import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asPlain, asSnippet, choices, END, hole } from './snippet.js';

test('a statement has a stop for each thing to write, names to choose from, and an end', () => {
  const pieces = ['butt ', choices(['shelf', 'a|b'], 'part'), ' {\n\tdepth ', hole('8'), '\n\t', END, '\n}'];
  expect(asSnippet(pieces)).toBe(`butt \${1|shelf,a\\|b|} {\n\tdepth \${2:8}\n\t$0\n\\}`);
  expect(asPlain(pieces)).toBe('butt shelf {\n\tdepth 8\n\t\n}');
  expect(asSnippet([choices([], 'part')])).toBe(`\${1:part}`);
});

test('whatever text is in it stands as it is', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const escaped = asSnippet([text]);
      expect(escaped.replace(/\\([\\$}])/g, '$1')).toBe(text);
      expect(escaped.replace(/\\[\\$}]/g, '')).not.toMatch(/[$}]/);
    }),
  );
});
