import { type ChangeOver, type Rational, type SetUp, say, type Text } from '@dryfit/engine';
import { CHANGE_WORDS, listed, patternWords, spacerWords, stopWords, surfaceWords } from './words.js';

/** One thing that is set for a set-up: what it is called, and how it stands. */
export interface SettingFact {
  readonly what: ChangeOver | 'connector';
  readonly name: string;
  readonly words: Text;
  /** What changing it is called; a connector is changed with its machine or depth. */
  readonly change?: string | undefined;
  /** It is not as the set-up before left it. */
  readonly anew: boolean;
}

/** All that is set for a set-up, in the order in which a bench is set. */
export function settingFacts(setUp: SetUp, before: SetUp | undefined): readonly SettingFact[] {
  const { setting, changed } = setUp;
  const length = (one: Rational): Text => say`${one}`;
  const fact = (what: ChangeOver, words: Text, name: string = CHANGE_WORDS[what]): SettingFact => ({
    what,
    name,
    words,
    change: CHANGE_WORDS[what],
    anew: changed.includes(what),
  });
  return [
    fact('machine', [setting.machine]),
    {
      what: 'connector',
      name: 'connector',
      words: [setting.connector],
      anew: before?.setting.connector !== setting.connector,
    },
    fact('depth', length(setting.depth)),
    fact('base', length(setting.base)),
    fact('pose', [`${surfaceWords(setting)}, reference ${setting.pose.reference}`], 'slots in'),
    fact(
      'pattern',
      setting.pattern === undefined
        ? patternWords(setting)
        : [...patternWords(setting), ': ', ...listed(setting.lines)],
    ),
    fact('spacer', spacerWords(setting)),
    fact('stop', stopWords(setting)),
  ];
}
