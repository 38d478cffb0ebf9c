import type { JointStatement, Spec } from '@dryfit/engine';
import { type Content, plain, withSlip } from './content.js';

const HEAD = `datasource db {
  provider = "postgresql"
}

generator client {
  provider = "prisma-client-js"
}

enum Connector {
  biscuit20
  biscuit10
  tenon8
  none
}

enum Material {
  birch18
  ply6
  ply34
  ply14
  bench36
}

enum Attitude {
  upright
  level
  facing
}

enum Verb {
  butt
  mitre
  groove
  rebate
  house
  rest
}

`;

/** The cabinets as a Prisma schema: a model for each cabinet, part and joint, with relations for what a joint names. */
export function prismaOf({ cabinets }: Content): string {
  const models = cabinets.map(({ spec }) => modelsOf(spec)).join('\n');
  // A model named by no type is this format's name that stands for nothing.
  return withSlip(HEAD + models, /connector +Connector /g, 'connector Connectors ');
}

function modelsOf(spec: Spec): string {
  const joints = spec.statements.filter((statement) => statement.kind === 'joint');
  const name = (part: string) => `${spec.name}_${part.replace(/\W/g, '_')}`;
  const connector = spec.connect?.kind === 'by' ? spec.connect.connector : 'none';
  const cabinet = `model ${spec.name} {\n  id        Int       @id @default(autoincrement())\n  connector Connector @default(${connector})\n}\n`;
  const back = new Map<string, string[]>();
  const jointModels = joints.map((joint, i) => {
    const own = `${spec.name}_Joint${i + 1}`;
    const named = namedIn(joint);
    const relations = named.map((part, k) => {
      const label = `"${own}_${k}"`;
      const list = back.get(part) ?? [];
      list.push(`  in${i + 1}_${k} ${own}[] @relation(${label})\n`);
      back.set(part, list);
      return `  part${k}Id Int\n  part${k} ${name(part)} @relation(${label}, fields: [part${k}Id], references: [id])\n`;
    });
    const facts = joint.facts.map((fact, k) => `  fact${k} String @default("${words(fact)}")\n`);
    return `model ${own} {\n  id   Int  @id @default(autoincrement())\n  verb Verb @default(${joint.verb})\n${relations.join('')}${facts.join('')}}\n`;
  });
  const parts = spec.parts.map(
    ({ id, attitude, material }) =>
      `model ${name(id)} {\n  id       Int      @id @default(autoincrement())\n  attitude Attitude @default(${attitude})\n  material Material @default(${material})\n${(back.get(id) ?? []).join('')}}\n`,
  );
  return [cabinet, ...parts, ...jointModels].join('\n');
}

const namedIn = (joint: JointStatement): readonly string[] => [
  ...joint.entering,
  ...new Set([...joint.between.flatMap(({ low, high }) => [low.part, high.part]), ...joint.to.map(({ part }) => part)]),
];

const words = (fact: unknown): string => JSON.stringify(plain(fact)).replaceAll('"', "'");
