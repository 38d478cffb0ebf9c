import { choices, END, hole, mm, type Piece } from './snippet.js';
import { namesOf, type Statements, type Whole } from './statement.js';

/** The entries of a file. */
export const FILE_STATEMENTS: Statements = {
  'Units units': [['units …', () => ['units ', { choices: ['mm', 'in'] }]]],
  'Cabinet cabinet': [
    [
      'cabinet … { … }',
      (at) => [
        ...['cabinet ', hole('Name'), ' {\n\tparameter wide = ', mm('600')],
        ...['\n\n\tpart lh, rh : upright of ', choices(namesOf(at, 'Material'), 'material')],
        ...['\n\tpart top, base : level of ', choices(namesOf(at, 'Material'), 'material')],
        '\n\n\twidth wide over lh and rh\n\t',
        END,
        '\n}',
      ],
    ],
  ],
  'Job job': [
    [
      'job … { … }',
      (at) => ['job ', hole('Name'), ' {\n\t', hole('1'), ' of ', choices(namesOf(at, 'Cabinet'), 'cabinet'), '\n}'],
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
  'Changes changes': [
    [
      'changes { … }',
      () => [
        ...['changes {\n\tmachine ', hole('4'), ' min\n\tpattern ', hole('3'), ' min\n\tstop ', hole('1'), ' min'],
        ...['\n\tload ', hole('1/2'), ' min\n\tslot ', hole('1/6'), ' min\n}'],
      ],
    ],
  ],
  'Glue glue': [
    [
      'glue … { … }',
      () => [
        ...['glue ', hole('pva'), ' {\n\tspread ', hole('150'), ' g/m2\n\tpacks of ', hole('750'), ' g, '],
        ...[hole('5'), ' kg\n\tspare ', hole('10'), ' %\n}'],
      ],
    ],
  ],
  'Tolerances tolerances': [
    [
      'tolerances { … }',
      () => [
        ...['tolerances {\n\tsaw ± ', mm('0.2'), '\n\tstop ± ', mm('0.1'), '\n\tline ± ', mm('0.2')],
        ...['\n\tspacer ± ', mm('0.05'), '\n\tfence ± ', mm('0.05'), '\n}'],
      ],
    ],
  ],
};

const UP_OR_DOWN: Piece = { choices: ['down', 'up'] };

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
      choices(namesOf(at, 'Machine'), 'machine'),
      '\n}',
    ],
  ];
}
