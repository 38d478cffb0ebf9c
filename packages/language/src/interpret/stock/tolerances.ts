import { type Finding, Rational, say, type Toleranced, type Tolerances } from '@dryfit/engine';
import type { Tolerance as ToleranceNode, Tolerances as TolerancesNode } from '../../generated/ast.js';
import type { Unit } from '../../parser/numbers.js';
import { plainNumber } from '../figure.js';
import { readTolerance } from '../measure.js';
import { Settings } from '../settings.js';

/** A bevel further off than this is no error of a setting, degrees. */
const MOST_DEGREES = Rational.of(5);

/** What a shop says of its own errors. None has a default: what nobody has written is taken to be nothing. */
export function readTolerances(node: TolerancesNode, unit: Unit, report: (finding: Finding) => void): Tolerances {
  const settings = new Settings(node, 'the tolerances', unit, report);
  const either = (written: readonly ToleranceNode[], words: string): Toleranced | undefined => {
    const one = settings.one(written, words, words);
    const tolerance = one && readTolerance(one, settings.reading);
    return one && tolerance && { value: Rational.ZERO, tolerance, source: settings.places.of(one) };
  };
  const oneWay = (word: 'cup' | 'dirt') => {
    const one = settings.one(node[word], word, word);
    const most = settings.length(one, word, 'zero');
    return one && most && { most, source: settings.places.of(one) };
  };
  return {
    source: settings.places.of(node),
    saw: either(node.saw, 'saw'),
    square: readSquare(settings),
    mitre: readMitre(settings),
    cuts: either(node.cuts, 'cuts'),
    fence: either(node.fence, 'fence'),
    spacer: either(node.spacer, 'spacer'),
    stop: either(node.stop, 'stop'),
    line: either(node.line, 'line'),
    cup: oneWay('cup'),
    dirt: oneWay('dirt'),
    reckon: settings.one(node.reckon, 'reckon', 'reckon') === 'worstcase' ? 'worst case' : 'root sum square',
  };
}

function readSquare(settings: Settings<TolerancesNode>): Tolerances['square'] {
  const written = settings.one(settings.node.square, 'square', 'square');
  const by = settings.length(written?.by, 'square', 'zero');
  const over = settings.length(written?.over, 'square');
  if (!written || !by || !over) return undefined;
  if (by.lt(over)) return { by, over, source: settings.places.of(written) };
  settings.wrong(
    written,
    say`the end of a piece cannot be ${by} out of square over ${over}`,
    say`Write how far it is out, then over what length, as in square 0.5 over 1000.`,
  );
  return undefined;
}

function readMitre(settings: Settings<TolerancesNode>): Tolerances['mitre'] {
  const { node } = settings;
  const text = settings.one(node.mitre, 'mitre', 'mitre');
  if (text === undefined) return undefined;
  const degrees = plainNumber(text);
  const source = settings.places.property(node, 'mitre');
  if (degrees && degrees.sign() >= 0 && degrees.le(MOST_DEGREES)) return { degrees, source };
  settings.wrong(
    node,
    say`the bevel of a mitre is off by a few degrees at most, and ${text} is no such figure`,
    say`Write it in degrees, as in mitre ± 0.1 degrees.`,
  );
  return undefined;
}
