import type { TSchema } from '@sinclair/typebox';
import { CalibrationSchema } from './calibration/schema.js';
import { Amount, ConsumablesSchema } from './consumables/schema.js';
import { FindingSchema, FindingsSchema } from './findings/schema.js';
import { FitSchema, JointSchema, PartSchema } from './fit-json/schema.js';
import { GlueUpSchema } from './glue-up/schema.js';
import { PlanSchema } from './plan/schema.js';
import { Approximate, Dimension, Exact, Place, Side } from './schema-parts.js';
import { ToleranceSchema } from './tolerance/schema.js';

const COMMON = {
  amount: Amount,
  exact: Exact,
  approximate: Approximate,
  place: Place,
  side: Side,
  dimension: Dimension,
  finding: FindingSchema,
  part: PartSchema,
  joint: JointSchema,
};

/** The published schemas by the names of their files. */
export const schemas = {
  calibration: withDefinitions(CalibrationSchema),
  fit: withDefinitions(FitSchema),
  consumables: withDefinitions(ConsumablesSchema),
  findings: withDefinitions(FindingsSchema),
  'glue-up': withDefinitions(GlueUpSchema),
  plan: withDefinitions(PlanSchema),
  tolerance: withDefinitions(ToleranceSchema),
};

/** The same schema with what recurs in it written once, under $defs. */
function withDefinitions(schema: TSchema): object {
  const names = new Map(Object.entries(COMMON).map(([name, common]) => [JSON.stringify(common), name]));
  const used: Record<string, unknown> = {};
  const refer = (value: unknown): unknown => {
    const name = names.get(JSON.stringify(value));
    if (name === undefined) return inside(value);
    used[name] ??= inside(value);
    return { $ref: `#/$defs/${name}` };
  };
  const inside = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(refer);
    if (typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([member, content]) => [member, refer(content)]));
  };
  const body = inside(schema) as object;
  return { ...body, $defs: Object.fromEntries(Object.entries(used).sort(([a], [b]) => (a < b ? -1 : 1))) };
}
