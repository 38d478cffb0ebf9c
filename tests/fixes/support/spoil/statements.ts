import { SIDES } from '@dryfit/engine';
import { exampleText } from '../../../support/examples.js';
import { any, changed } from './bases.js';
import type { Slip } from './names.js';

const SIDE = `(?:${SIDES.join('|')})`;

/** A wall of a groove or notch that the part has not. */
export const wallMissing: Slip = (text, random) =>
  changed(
    text,
    new RegExp(`\\b(above|below|from|with|against) ((?!dryfit)\\w+(?: \\d+)?)\\.(${SIDE})\\b`, 'g'),
    random,
    (m) => `${m[1]} ${m[2]}.${any(['groove', 'notch'], random)}.${m[3]}`,
  );

/** A side that cannot be meant: of a plane, or the one a fact begins with. */
export const sideMistaken: Slip = (text, random) => {
  const other = (now = '') =>
    any(
      SIDES.filter((side) => side !== now),
      random,
    ) ?? '';
  const plane = () =>
    changed(
      text,
      new RegExp(`(\\b(?:above|below|with|against) \\w+(?: \\d+)?(?:\\.groove)?\\.)(${SIDE})\\b`, 'g'),
      random,
      (m) => `${m[1]}${other(m[2])}`,
    );
  const own = () =>
    changed(
      text,
      new RegExp(`^( +(?:\\w+\\.)?)(${SIDE})(?= (?:\\d|flush|set|against))`, 'gm'),
      random,
      (m) => `${m[1]}${other(m[2])}`,
    );
  return random() < 0.6 ? (plane() ?? own()) : (own() ?? plane());
};

/** A count where a length is wanted, a length where a count is, or lengths that are multiplied. */
export const unitMistaken: Slip = (text, random) => {
  const length = /\b((?:width|height|depth) )(\d[\w./" ]*?)(?= (?:over|of|between)\b)/g;
  const declared = (own: string) => own.replace(/^(cabinet \w+ \{\r?\n)/m, '$1  parameter times : count = 2\n');
  const made =
    random() < 0.5
      ? changed(text, length, random, (m) => `${m[1]}${m[2]} + times`)
      : changed(text, length, random, (m) => `${m[1]}${m[2]} * 2 mm`);
  return (
    made &&
    declared(
      made.includes('times') ? made : made.replace(/^(cabinet \w+ \{\r?\n)/m, '$1  parameter wide = times * 100\n'),
    )
  );
};

/** A part and a half. */
export const half: Slip = (text, random) => {
  const parts = () =>
    changed(text, /^( +parts \w+ 1 to )(\d+)/gm, random, (m) => `${m[1]}${m[2]}.${any(['5', '25', '4'], random)}`);
  const job = () => {
    const name = /^cabinet (\w+)/m.exec(text)?.[1];
    return name === undefined
      ? undefined
      : `${text}\njob Lindwell { ${any(['1.5', '2.25', '0.4', '3.9'], random)} of ${name} }\n`;
  };
  return random() < 0.5 ? (parts() ?? job()) : job();
};

/** An offset too many, or one too few. */
export const offsetsMiscounted: Slip = (text, random) =>
  changed(
    text,
    new RegExp(`^( +${SIDE} )(\\d[\\w./" ,]*?)(?= (?:above|below)\\b)`, 'gm'),
    random,
    ([, side, all = '']) => {
      const own = all.split(', ');
      const fewer = own.length > 2 && random() < 0.5;
      return `${side}${(fewer ? own.slice(1) : [...own, own.at(-1), ...(random() < 0.5 ? ['45'] : [])]).join(', ')}`;
    },
  );

const SHOP = exampleText('shop.joinery').split('\n').slice(2).join('\n');
const FIGURE = /\b(thickness|measured|cutter|bit|kerf|along|across|plunge|body|bed|within|sheet) (?=\d)/g;

/** A figure of the stock that cannot be. */
export const figureMistaken: Slip = (text, random) => {
  if (/^import "shop/m.test(text) && text.includes('units in')) return undefined;
  const whole = text.replace(/^import "shop\.joinery"\r?\n/m, `${SHOP}\n`);
  const negative = () => changed(whole, FIGURE, random, ([words]) => `${words}-`);
  const backwards = () =>
    changed(
      whole,
      /\b(stop|base to centre|pitch) (\d[\d./"]*) to (\d[\d./"]*)/g,
      random,
      (m) => `${m[1]} ${m[3]} to ${m[2]}`,
    );
  const along = () => changed(whole, /\bgrain along \d[\d./" ]*/g, random, () => 'grain along 999');
  return any([negative, negative, backwards, along], random)?.() ?? negative();
};

/** How deep a groove, housing or rebate is left out. */
export const depthForgotten: Slip = (text, random) => {
  const given = changed(text, /^ +(?:depth|lap) \d[^\n]*\n/gm, random, () => '');
  const grooved = () =>
    changed(text, /\bbutt (?=\w+ (?:between|to) )/g, random, () => `${any(['house', 'rebate', 'groove'], random)} `);
  return random() < 0.5 ? (grooved() ?? given) : (given ?? grooved());
};

/** A fact or a setting written twice, or one that is another kind's. */
export const writtenTwice: Slip = (text, random) => {
  const twice = () =>
    changed(
      text,
      /^ +(?:reference|datum|connect|thickness|along|across|bed|stop|body|skin|step)\b[^\n{}]*\n/gm,
      random,
      ([line]) => `${line}${line}`,
    );
  const strange = () =>
    changed(
      text,
      /^ +flush [^\n{}]*\n/gm,
      random,
      ([line]) => `${line}    ${any(['depth 8', 'clearance 0.5', 'outer top'], random)}\n`,
    );
  return random() < 0.7 ? (twice() ?? strange()) : (strange() ?? twice());
};
