import type { Verb } from '@dryfit/engine';
import type { Situation } from './situation.js';
import { choices, END, hole, mm, type Piece } from './snippet.js';
import { type Standing, thicknessOf } from './standing.js';
import { namesOf, partNames, type Statements, secondFirst, type Whole } from './statement.js';

/** The statements of a cabinet and the facts of its joints. */
export const CABINET_STATEMENTS: Statements = {
  'Verb butt': [joint('butt', ['flush ', hole('front')])],
  'Verb mitre': [joint('mitre', ['outer ', { choices: ['top', 'bottom', 'left', 'right', 'front', 'rear'] }])],
  'Verb groove': [joint('groove', ['depth ', mm('8'), '\n\tclearance ', mm('0.5')])],
  'Verb rebate': [joint('rebate', ['lap ', mm('8')])],
  'Verb house': [joint('house', ['depth ', mm('5')])],
  'Verb rest': [joint('rest', ['flush ', hole('front')])],
  'PartLine part': [
    [
      'part … : … of …',
      (at) => ['part ', hole('name'), ' : ', attitudes, ' of ', choices(namesOf(at, 'Material'), 'material')],
    ],
  ],
  'PartLine parts': [
    [
      'parts … 1 to … : … of …',
      (at) => [
        'parts ',
        hole('name'),
        ' 1 to ',
        hole('3'),
        ' : ',
        attitudes,
        ' of ',
        choices(namesOf(at, 'Material'), 'material'),
      ],
    ],
  ],
  'Parameter parameter': [['parameter … = …', () => ['parameter ', hole('name'), ' = ', mm('600')]]],
  'Extent width': [over('width', 'x')],
  'Extent depth': [over('depth', 'y')],
  'Extent height': [over('height', 'z')],
  'NotchLine notch': [
    [
      'notch … at front bottom { … }',
      (at) => [
        'notch ',
        choices(partNames(at), 'part'),
        ' at front bottom { depth ',
        mm('75'),
        '  height ',
        mm('100'),
        ' }',
      ],
    ],
  ],
  'CantLine cant': [
    [
      'cant … at front right { … }',
      (at) => [
        'cant ',
        choices(partNames(at), 'part'),
        ' at front right { width ',
        mm('300'),
        '  depth ',
        mm('300'),
        ' }',
      ],
    ],
  ],
  'BandLine band': [
    [
      'band … of … with …',
      (at) => [
        'band ',
        hole('front'),
        ' of ',
        choices(partNames(at), 'part'),
        ' with ',
        choices(namesOf(at, 'Band'), 'band'),
      ],
    ],
  ],
  'LoadLine load': [
    ['load … kg on …', (at) => ['load ', hole('25'), ' kg on ', choices(levelFirst(at), 'shelf')]],
    [
      'load … kg at the middle of …',
      (at) => ['load ', hole('25'), ' kg at the middle of ', choices(levelFirst(at), 'shelf')],
    ],
  ],
  'MoistureLine moisture': [
    [
      'moisture … to … % made at … %',
      () => ['moisture ', hole('6'), ' to ', hole('11'), ' % made at ', hole('8'), ' %'],
    ],
  ],
  'ConnectFact connect': [
    [
      'connect … by …',
      (at) => [
        'connect ',
        choices(namesOf(at, 'Connector'), 'connector'),
        ' by ',
        choices(namesOf(at, 'Pattern'), 'pattern'),
      ],
    ],
    ['connect none "…"', () => ['connect none "', hole('glued'), '"']],
  ],
  'Silence allow': [['allow … "…"', () => ['allow ', hole('slot-near-edge'), ' "', hole('why it may pass'), '"']]],
  'LeaveOutFact leave': [['leave out …', () => ['leave out ', mm('100')]]],
  'SpacerFact spacer': [['spacer cut', () => ['spacer cut']]],
  'CentredFact centred': [
    [
      'centred between … and …',
      (at) => ['centred between ', choices(partNames(at), 'a'), ' and ', choices(secondFirst(partNames(at)), 'b')],
    ],
  ],
  'OpeningsFact openings': [
    [
      'openings equal between … and …',
      (at) => [
        'openings equal between ',
        choices(partNames(at), 'low'),
        '.top and ',
        choices(partNames(at), 'high'),
        '.bottom',
      ],
    ],
  ],
};

const attitudes: Piece = { choices: ['upright', 'level', 'facing'] };

function joint(verb: Verb, body: readonly Piece[]): readonly [string, Whole] {
  return [
    `${verb} … between … and … { … }`,
    (situation) => {
      const { entering, low, high } = likely(situation);
      const hosts = ['between ', choices(low, 'lh'), ' and ', choices(high, 'rh')];
      return [`${verb} `, choices(entering, 'shelf'), ' ', ...hosts, ' {\n\t', ...body, '\n\t', END, '\n}'];
    },
  ];
}

function over(word: string, axis: string): readonly [string, Whole] {
  return [
    `${word} … over … and …`,
    ({ parts }) => {
      const across = [...parts.values()].filter((part) => thicknessOf(part) === axis).map(({ name }) => name);
      return [`${word} `, mm('600'), ' over ', choices(across, 'a'), ' and ', choices(secondFirst(across), 'b')];
    },
  ];
}

/** What most likely comes next: a part that no joint holds yet, between the first two that stand alike and otherwise than it. */
function likely({ parts }: Situation): {
  readonly entering: string[];
  readonly low: string[];
  readonly high: string[];
} {
  const all = [...parts.values()];
  const pairOf = (own: Standing | undefined): readonly Standing[] =>
    ['upright', 'level', 'facing']
      .filter((attitude) => attitude !== own?.attitude)
      .map((attitude) => all.filter((part) => part.attitude === attitude && part.numbers === undefined))
      .find((alike) => alike.length > 1) ?? [];
  const free = all.filter(({ enters }) => enters.length === 0);
  const first = free.find((part) => !pairOf(part).slice(0, 2).includes(part) && pairOf(part).length > 1) ?? all.at(-1);
  const pair = pairOf(first).map(({ name }) => name);
  const rest = all.map(({ name }) => name).filter((name) => name !== first?.name);
  return {
    entering: once([first, ...free, ...all].flatMap((part) => part?.name ?? [])),
    low: once([...pair, ...rest]),
    high: once([...secondFirst(pair), ...rest]),
  };
}

/** Every part, those that lie level first: these carry loads. */
function levelFirst({ parts }: Situation): string[] {
  const all = [...parts.values()];
  const level = all.filter(({ attitude }) => attitude === 'level');
  return once([...level, ...all].map(({ name }) => name));
}

const once = (names: readonly string[]): string[] => [...new Set(names)];
