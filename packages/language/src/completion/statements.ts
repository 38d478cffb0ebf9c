import { formatInch, Rational, type Units, type Verb } from '@dryfit/engine';
import { wordLine } from '../hover/words.js';
import { unitOf } from '../interpret/units.js';
import { type Offer, RANK } from './offer.js';
import type { Situation } from './situation.js';
import { choices, END, hole, mm, type Piece } from './snippet.js';
import { type Standing, thicknessOf } from './standing.js';

type Whole = (situation: Situation) => readonly Piece[];

/** Statements offered whole, by the grammar rule and the word that they begin with. */
const STATEMENTS: Readonly<Record<string, readonly (readonly [label: string, pieces: Whole])[]>> = {
  'Verb butt': [joint('butt', ['flush ', hole('front')])],
  'Verb mitre': [joint('mitre', ['outer ', { choices: ['top', 'bottom', 'left', 'right', 'front', 'rear'] }])],
  'Verb groove': [joint('groove', ['depth ', mm('8'), '\n\tclearance ', mm('0.5')])],
  'Verb rebate': [joint('rebate', ['lap ', mm('8')])],
  'Verb house': [joint('house', ['depth ', mm('5')])],
  'Verb rest': [joint('rest', ['flush ', hole('front')])],
  'PartLine part': [
    [
      'part … : … of …',
      (at) => ['part ', hole('name'), ' : ', attitudes, ' of ', choices(stock(at, 'Material'), 'material')],
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
        choices(stock(at, 'Material'), 'material'),
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
        choices(names(at), 'part'),
        ' at front bottom { depth ',
        mm('75'),
        '  height ',
        mm('100'),
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
        choices(names(at), 'part'),
        ' with ',
        choices(stock(at, 'Band'), 'band'),
      ],
    ],
  ],
  'ConnectFact connect': [
    [
      'connect … by …',
      (at) => [
        'connect ',
        choices(stock(at, 'Connector'), 'connector'),
        ' by ',
        choices(stock(at, 'Pattern'), 'pattern'),
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
      (at) => ['centred between ', choices(names(at), 'a'), ' and ', choices(secondFirst(names(at)), 'b')],
    ],
  ],
  'OpeningsFact openings': [
    [
      'openings equal between … and …',
      (at) => [
        'openings equal between ',
        choices(names(at), 'low'),
        '.top and ',
        choices(names(at), 'high'),
        '.bottom',
      ],
    ],
  ],
  'Units units': [['units …', () => ['units ', { choices: ['mm', 'in'] }]]],
  'Cabinet cabinet': [
    [
      'cabinet … { … }',
      (at) => [
        ...['cabinet ', hole('Name'), ' {\n\tparameter wide = ', mm('600')],
        ...['\n\n\tpart lh, rh : upright of ', choices(stock(at, 'Material'), 'material')],
        ...['\n\tpart top, base : level of ', choices(stock(at, 'Material'), 'material')],
        '\n\n\twidth wide over lh and rh\n\t',
        END,
        '\n}',
      ],
    ],
  ],
  'Job job': [
    [
      'job … { … }',
      (at) => ['job ', hole('Name'), ' {\n\t', hole('1'), ' of ', choices(stock(at, 'Cabinet'), 'cabinet'), '\n}'],
    ],
  ],
  'Material material': [
    [
      'material … { … }',
      () => [
        ...['material ', hole('name'), ' {\n\tthickness ', mm('18'), '\n\tmeasured ', mm('17.7'), ' ± ', mm('0.2')],
        ...['\n\tsheet ', mm('2440'), ' x ', mm('1220'), '\n\tgrain along ', mm('2440'), '\n}'],
      ],
    ],
  ],
  'Band band': [['band … { … }', () => ['band ', hole('name'), ' { thickness ', mm('1'), ' }']]],
  'Machine machine': [
    machine('cutter', ['cutter ', mm('100'), '\n\tkerf ', mm('4'), '\n\tbase to centre ', mm('9.5')]),
    machine('bit', ['bit ', mm('8'), '\n\tbase to centre ', mm('5'), ' to ', mm('30')]),
    machine('drill', ['drill ', mm('8'), '\n\tbase to centre ', mm('9')]),
  ],
  'Connector connector': [
    connector('biscuit', [
      'along ',
      mm('56'),
      '\n\tacross ',
      mm('23'),
      '\n\tthickness ',
      mm('4'),
      '\n\tplunge ',
      mm('12.3'),
    ]),
    connector('loose tenon', [
      ...['along ', mm('22'), '\n\tacross ', mm('40'), '\n\tthickness ', mm('8'), '\n\tslot ', mm('23')],
      ...['\n\tplunge ', mm('14'), ' in face, ', mm('28'), ' in edge'],
    ]),
    connector('dowel', [
      'diameter ',
      mm('8'),
      '\n\tlength ',
      mm('30'),
      '\n\tplunge ',
      mm('12'),
      ' in face, ',
      mm('20'),
      ' in edge',
    ]),
  ],
  'Pattern pattern': [
    ['pattern … { lines … }', () => ['pattern ', hole('name'), ' { lines ', mm('70, 180, 270'), ' }']],
    [
      'pattern … { first … last … }',
      () => ['pattern ', hole('name'), ' { first ', mm('80'), '  last ', mm('80'), '  pitch at most ', mm('150'), ' }'],
    ],
  ],
  'Jig jig': [
    [
      'jig … { … }',
      () => [
        ...[
          'jig ',
          hole('name'),
          ' {\n\tbed ',
          mm('900'),
          '\n\tfences left, right\n\tstop ',
          mm('0'),
          ' to ',
          mm('760'),
        ],
        ...[' step ', mm('0.5'), '\n\tspacers ', mm('6, 10, 12'), ' within ', mm('0.2'), '\n}'],
      ],
    ],
  ],
  'Pose pose': [
    [
      'pose { … }',
      () => ['pose {\n\tedge slots reference ', UP_OR_DOWN, '\n\tface slots reference ', UP_OR_DOWN, '\n}'],
    ],
  ],
  'Limits limits': [
    [
      'limits { … }',
      () => [
        ...['limits {\n\tslot to edge along the run ', mm('10'), '\n\twall beside slot ', mm('4')],
        ...['\n\tskin under slot ', mm('3'), '\n\tstep ', mm('0.3'), '\n}'],
      ],
    ],
  ],
};

const UP_OR_DOWN: Piece = { choices: ['down', 'up'] };
const attitudes: Piece = { choices: ['upright', 'level', 'facing'] };

/** The statements that begin with a word, whole, with what there is to name in them. */
export function statementOffers(word: string, rule: string, situation: Situation): Offer[] {
  const key = `${rule} ${word}`;
  if (!Object.hasOwn(STATEMENTS, key)) return [];
  return (STATEMENTS[key] ?? []).map(([label, pieces]) => ({
    label,
    kind: 'statement',
    rank: RANK.statement,
    documentation: wordLine(word, rule),
    insert: pieces(situation).map((piece) => inUnits(piece, unitOf(situation.file))),
  }));
}

/** Examples of lengths are thought of in mm; in a file in inches they are sixteenths. */
function inUnits(piece: Piece, units: Units): Piece {
  if (units === 'mm' || typeof piece === 'string' || !('lengths' in piece)) return piece;
  const inches = (length: string) => formatInch(Rational.parse(length) ?? Rational.ONE, { denominator: 16 }).text;
  return hole(piece.hole.split(', ').map(inches).join(', '));
}

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

function machine(tool: string, body: readonly Piece[]): readonly [string, Whole] {
  return [
    `machine … { ${tool} … }`,
    () => ['machine ', hole('name'), ' {\n\t', ...body, '\n\tbody ', mm('140'), '\n}'],
  ];
}

function connector(shape: string, body: readonly Piece[]): readonly [string, Whole] {
  return [
    `connector … : ${shape} { … }`,
    (at) => [
      'connector ',
      hole('name'),
      ` : ${shape} {\n\t`,
      ...body,
      '\n\tby ',
      choices(stock(at, 'Machine'), 'machine'),
      '\n}',
    ],
  ];
}

const names = ({ parts }: Situation): readonly string[] => [...parts.keys()];

const stock = ({ around, file }: Situation, type: string): readonly string[] => [...around.names(file, type).keys()];

const secondFirst = ([first, second, ...others]: readonly string[]): readonly string[] =>
  first !== undefined && second !== undefined
    ? [second, first, ...others]
    : [first, second].filter((name) => name !== undefined);

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

const once = (names: readonly string[]): string[] => [...new Set(names)];
