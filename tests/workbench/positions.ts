import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A joint of shelves or ends that a text lets one work out on paper. */
export interface PaperJoint {
  /** The statement's first words, as the editor shows them: "butt shelf". */
  readonly statement: string;
  /** Distances of the slots from the rear edge of the sides, and from the entering part's own rear edge. */
  readonly host: readonly number[];
  readonly entering: readonly number[];
  readonly spacer: number;
}

/**
 * Slot positions worked out from a text by pattern matching and subtraction, as one would on paper: lines of the
 * pattern the cabinet connects by, less how far the part lies in from the rear. Knows butt joints between the sides
 * that are flush at the rear, or against the front of the back's groove, and nothing else; the program's own reading
 * of the language has no part in it.
 */
export function onPaper(folder: string, file: string): readonly PaperJoint[] {
  const text = readFileSync(join(folder, file), 'utf8');
  const shop = readFileSync(join(folder, 'shop.joinery'), 'utf8');
  const pattern = found(text, /^ {2}connect \w+ by (\w+)/m);
  const layout = found(shop, new RegExp(`^pattern ${pattern}\\s+\\{ lines ([^}]*)\\}`, 'm'));
  const [written = '', margin] = layout.split(/\s+skip within\s+/);
  const lines = written.split(',').map(Number);
  const deep = Number((/^ {2}depth\s+(\d+) of lh/m.exec(text) ?? [])[1] ?? found(text, /^ {2}parameter deep = (\d+)/m));
  const back = found(text, /groove back[^{]*\{([^}]*)\}/);
  const inset = Number(found(back, /set back (\d+) from lh/)) + Number(found(back, /width (\d+)/));
  return [...text.matchAll(/^ {2}(butt (\w+) between (?:lh|divider) and (?:rh|divider)) \{([^}]*)\}/gm)].flatMap(
    ([, , part, facts = '']) => {
      const spacer = /rear against back\.groove\.front/.test(facts)
        ? inset
        : /flush[^\n]*rear/.test(facts)
          ? 0
          : undefined;
      if (spacer === undefined) return [];
      const near = Number(margin ?? 0);
      const used = lines.filter((line) => line - spacer >= near && line > spacer && deep - line >= near);
      return [{ statement: `butt ${part}`, host: used, entering: used.map((line) => line - spacer), spacer }];
    },
  );
}

function found(text: string, pattern: RegExp): string {
  const match = pattern.exec(text)?.[1];
  if (match === undefined) throw new Error(`nothing in the text matches ${pattern}`);
  return match.trim();
}
