import { describe, expect, it } from 'vitest';
import { formatEdits } from './edits.js';
import { toEnd } from './steps.js';
import { examples, format, reader } from './texts.fixture.js';

describe('the layout', () => {
  it('has a line for each statement, and one for each fact where its braces span lines', () => {
    expect(
      format(
        'units mm import "shop.joinery" cabinet A{part lh,rh:upright of birch18 butt shelf between lh and rh{flush top,rear\ndatum rear}}',
      ),
    ).toBe(`units mm
import "shop.joinery"
cabinet A {
  part lh, rh : upright of birch18
  butt shelf between lh and rh {
    flush top, rear
    datum rear
  }
}
`);
  });

  it('leaves braces on the one line they stand on, two blanks between facts', () => {
    expect(
      format('cabinet A {\n butt a between b and c {flush top   datum rear }\n}\npattern p{first 1" last 1"}\n'),
    ).toBe(`cabinet A {
  butt a between b and c { flush top  datum rear }
}
pattern p { first 1"  last 1" }
`);
  });

  it('sets words apart by one blank, and not what belongs together', () => {
    const body =
      'width ( wide+2 * -3 ) - -( 4 )over lh  2 and rh\nbase . top against back . groove.front\nallow slot - near - edge "so"';
    expect(
      format(`cabinet A {\nheight 23   1/4   in of lh\n${body}\n}\njob J { 2 of A ( wide=3,deep = 4 ) }`),
    ).toBe(`cabinet A {
  height 23 1/4 in of lh
  width (wide + 2 * -3) - -(4) over lh 2 and rh
  base.top against back.groove.front
  allow slot-near-edge "so"
}
job J {
  2 of A(wide = 3, deep = 4)
}
`);
  });

  it('keeps one blank line where there were some, none inside a brace or at the ends', () => {
    expect(
      format('\n\nunits mm\n\n\n\ncabinet A {\n\n\n  part a : level of b\n\n\n  part c : level of b\n\n}\n\n\n'),
    ).toBe(`units mm

cabinet A {
  part a : level of b

  part c : level of b
}
`);
  });

  it('joins the lines of a statement that fits on one, and leaves them where it does not', () => {
    const many = Array.from({ length: 30 }, (_, n) => `part${n}`).join(', ');
    expect(format('cabinet A {\n  band front of a,\n    b with c\n}\n')).toContain('\n  band front of a, b with c\n');
    expect(format(`cabinet A {\nband front of ${many},\nb with c\n}\n`)).toContain(`${many},\n      b with c\n`);
  });

  it('lines a column up again where its author did, in all lines of one kind that follow each other', () => {
    expect(
      format('cabinet A {\n  part lh, rh  : upright of b\n  part c : level    of b\n\n  part d : level of b\n}\n'),
    ).toBe(`cabinet A {
  part lh, rh : upright of b
  part c      : level   of b

  part d : level of b
}
`);
    expect(
      format(
        'cabinet A {\n  width   w over a and b\n  height h + 1   of a\n  depth d of a  // so\n  datum rear    // why\n}\n',
      ),
    ).toBe(`cabinet A {
  width  w     over a and b
  height h + 1 of a
  depth  d     of a  // so
  datum rear         // why
}
`);
  });

  it.each([...examples])('of %s is the one it has', (_, text) => {
    expect(format(text)).toBe(text);
  });

  it('of an empty text is empty', () => {
    expect(format('')).toBe('');
    expect(format(' \n\t\r\n')).toBe('');
  });
});

describe('comments', () => {
  it('stay on their own line, behind what they stand behind, and within a statement', () => {
    expect(
      format(`// first
cabinet A { // open
// own
butt a // why
between b and c { /* in */ flush top } /* after
   lines */
    /* before */ datum rear
      // last
}
// end`),
    ).toBe(`// first
cabinet A {  // open
  // own
  butt a  // why
      between b and c { /* in */ flush top }  /* after
   lines */
  /* before */ datum rear
  // last
}
// end
`);
  });
});

describe('a text with a syntax error', () => {
  it('is formatted but for the lines that cannot be read', () => {
    const broken =
      'cabinet A {\npart a:level of b\nbutt a between b and c {\ndatum   rear\n  flush  top ?\n}\nwidth 3   over a and b\n}';
    expect(format(broken)).toBe(`cabinet A {
  part a : level of b
  butt a between b and c {
    datum rear
  flush  top ?
  }
  width 3 over a and b
}
`);
  });

  const lines = [
    'cabinet A {',
    'part   a : level of b',
    '  butt c between a and d {',
    '    flush top',
    '  }',
    'datum   rear',
    '}',
    '',
  ];
  const text = lines.join('\n');
  const [start, end] = [text.indexOf('butt'), text.indexOf('datum')];
  const joint = reader.tokens(text).tokens.filter(({ startOffset: at }) => at >= start && at < end);
  it.each(joint.map(({ image, startOffset }) => [image, startOffset]))(
    'that lacks %s (at %i) is formatted before and behind it',
    (image, at) => {
      const formatted = format(text.slice(0, at) + text.slice(at + image.length));
      expect(formatted).toContain('\n  part a : level of b\n');
      expect(formatted).toMatch(/\n {2,4}datum rear\n/);
    },
  );
});

describe('line ends', () => {
  it('are those of the text', () => {
    expect(format('units mm\r\n/* a\r\n b */\r\n\r\n\r\ncabinet A {\r\ndatum rear}')).toBe(
      'units mm\r\n/* a\r\n b */\r\n\r\ncabinet A {\r\n  datum rear\r\n}\r\n',
    );
    expect(format('units mm\nimport "a"\r\nimport "b"\n')).toBe('units mm\nimport "a"\nimport "b"\n');
  });
});

describe('edits', () => {
  it('change white space only, each place by itself', () => {
    const text = 'units   mm\ncabinet A {\ndatum rear}\n';
    const edits = toEnd(formatEdits(text, reader));
    expect(edits).toEqual([
      { start: 5, end: 8, text: ' ' },
      { start: 22, end: 23, text: '\n  ' },
      { start: 33, end: 33, text: '\n' },
    ]);
  });
});
