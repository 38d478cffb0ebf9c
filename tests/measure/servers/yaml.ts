import { type Content, plain, withSlip } from './content.js';

/** The cabinets as YAML: every part and joint with all that the text says of it. */
export function yamlOf({ cabinets }: Content): string {
  const lines: string[] = ['cabinets:'];
  for (const { spec } of cabinets) {
    lines.push(`  - name: ${spec.name}`);
    lines.push(`    connector: ${spec.connect?.kind === 'by' ? spec.connect.connector : 'none'}`);
    lines.push('    parts:');
    for (const { id, attitude, material } of spec.parts) {
      lines.push(`      - name: ${quoted(id)}`, `        attitude: ${attitude}`, `        material: ${material}`);
    }
    lines.push('    statements:');
    for (const statement of spec.statements) write(plain(statement) as Record<string, unknown>, 6, lines);
  }
  return withSlip(`${lines.join('\n')}\n`, /connector: biscuit20/g, 'connector: biscuit99');
}

function write(item: Record<string, unknown>, indent: number, lines: string[]): void {
  const entries = Object.entries(item).filter(([key]) => key !== 'id');
  entries.forEach(([key, value], i) => {
    const before = `${' '.repeat(indent)}${i === 0 ? '- ' : '  '}${key}:`;
    if (Array.isArray(value) && value.every(isRecord) && value.length > 0) {
      lines.push(before);
      for (const one of value) write(one, indent + 4, lines);
    } else lines.push(`${before} ${JSON.stringify(value)}`);
  });
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const quoted = (text: string): string => (/^\w+$/.test(text) ? text : JSON.stringify(text));

const text = (description: string) => ({ type: 'string', description });
const one = (of: readonly string[], description: string) => ({ enum: of, description });

/** What the YAML has to look like. */
export const SCHEMA = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  type: 'object',
  required: ['cabinets'],
  additionalProperties: false,
  properties: {
    cabinets: {
      type: 'array',
      items: {
        type: 'object',
        required: ['name', 'connector', 'parts', 'statements'],
        additionalProperties: false,
        properties: {
          name: text('Name of the cabinet'),
          connector: one(['biscuit20', 'biscuit10', 'tenon8', 'none'], 'Connector of joints that name no other'),
          parts: { type: 'array', items: { $ref: '#/definitions/part' } },
          statements: { type: 'array', items: { $ref: '#/definitions/statement' } },
        },
      },
    },
  },
  definitions: {
    part: {
      type: 'object',
      required: ['name', 'attitude', 'material'],
      additionalProperties: false,
      properties: {
        name: text('Name of the part'),
        attitude: one(['upright', 'level', 'facing'], 'How the part stands'),
        material: one(['birch18', 'ply6', 'ply34', 'ply14', 'bench36'], 'Sheet it is cut from'),
      },
    },
    fact: {
      type: 'object',
      required: ['kind'],
      properties: {
        kind: one(['flush', 'flush with', 'set back', 'proud', 'against', 'at', 'centred', 'openings'], 'What it says'),
        side: one(['left', 'right', 'front', 'rear', 'bottom', 'top'], 'Side it speaks of'),
        by: { anyOf: [{ type: 'number' }, { type: 'array', items: { type: 'number' } }], description: 'mm' },
      },
    },
    statement: {
      type: 'object',
      required: ['kind'],
      properties: {
        kind: one(['dimension', 'joint', 'placing', 'notch', 'band'], 'Kind of statement'),
        verb: one(['butt', 'mitre', 'groove', 'rebate', 'house', 'rest'], 'How the parts meet'),
        entering: { type: 'array', items: { type: 'string' }, minItems: 1, description: 'Parts that enter' },
        facts: { type: 'array', items: { $ref: '#/definitions/fact' } },
        depth: { type: 'number', exclusiveMinimum: 0, description: 'Depth of the groove, mm' },
        width: { type: 'number', exclusiveMinimum: 0, description: 'Width of the groove, mm' },
        clearance: { type: 'number', minimum: 0, description: 'Room left, mm' },
      },
    },
  },
};
