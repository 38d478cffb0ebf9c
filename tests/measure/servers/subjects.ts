import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Content, contentOf, joineryOf, SHOP } from './content.js';
import { prismaOf } from './prisma.js';
import type { Server } from './session.js';
import { SCHEMA, yamlOf } from './yaml.js';

/** A server with a folder of its own, and where in its file somebody types and looks. */
export interface Subject {
  readonly server: Server;
  readonly root: string;
  readonly file: string;
  /** A letter typed at the end of any of these makes a name that stands for nothing. */
  readonly type: RegExp;
  /** Absent for a server that has nothing to say of a thing. */
  readonly hover?: RegExp | undefined;
  readonly complete: RegExp;
}

/** Where the programs are that are measured. */
export interface Programs {
  readonly dryfit: string;
  readonly bare: string;
  readonly peers: string;
}

const JOINERY = {
  file: 'cabinets.joinery',
  type: /^ {2}connect biscuit20/gm,
  hover: /(?<=^ {2}(?:butt|mitre|groove) )\w+/gm,
  complete: /^ {2}connect /gm,
};

const SETTINGS = { thickness: 'measured', joinery: true };

export const dryfit = (program: string, joinery = true): Server => ({
  name: joinery ? 'Dryfit' : 'Dryfit, joinery off',
  args: [program],
  languageId: 'joinery',
  initializationOptions: { dryfit: { ...SETTINGS, joinery } },
  settings: { dryfit: { ...SETTINGS, joinery } },
});

export const bare = (program: string): Server => ({ name: 'bare Langium', args: [program], languageId: 'joinery' });

/** The servers with the same content, each in its own language. */
export async function subjects(entities: number, folder: string, programs: Programs): Promise<readonly Subject[]> {
  const content = await contentOf(entities);
  const yaml = write(folder, 'yaml', {
    'cabinets.yaml': yamlOf(content),
    'schema.json': JSON.stringify(SCHEMA),
  });
  const prisma = write(folder, 'prisma', { 'schema.prisma': prismaOf(content) });
  const joinery = write(folder, 'joinery', { 'cabinets.joinery': joineryOf(content), 'shop.joinery': SHOP });
  return [
    {
      server: {
        name: 'yaml-language-server',
        args: [join(programs.peers, 'yaml-language-server/bin/yaml-language-server')],
        languageId: 'yaml',
        settings: {
          yaml: {
            validate: true,
            hover: true,
            completion: true,
            schemaStore: { enable: false, url: '' },
            schemas: { [pathToFileURL(join(yaml, 'schema.json')).href]: '*.yaml' },
          },
        },
      },
      root: yaml,
      file: 'cabinets.yaml',
      type: /connector: biscuit20/g,
      hover: /attitude(?=:)/g,
      complete: /connector: /g,
    },
    {
      server: {
        name: '@prisma/language-server',
        args: [join(programs.peers, '@prisma/language-server/dist/bin.js')],
        languageId: 'prisma',
        settings: { prisma: {} },
      },
      root: prisma,
      file: 'schema.prisma',
      type: /^ {2}connector Connector/gm,
      hover: /(?<=^ {2}part0 )\w+/gm,
      complete: /^ {2}connector /gm,
    },
    { server: dryfit(programs.dryfit), root: joinery, ...JOINERY },
    // What a part comes to is not known without the joinery.
    { server: dryfit(programs.dryfit, false), root: joinery, ...JOINERY, hover: undefined },
  ];
}

/** Dryfit with one file open of a folder whose files have so many entities each. */
export async function spread(files: number, each: number, folder: string, programs: Programs): Promise<Subject> {
  const content = await contentOf(each);
  const names = Array.from({ length: files }, (_, i) => (i === 0 ? 'cabinets.joinery' : `cabinets${i}.joinery`));
  const texts = names.map((name): [string, string] => [name, joineryOf(content)]);
  const root = write(folder, `spread-${files}`, { ...Object.fromEntries(texts), 'shop.joinery': SHOP });
  return { server: { ...dryfit(programs.dryfit), name: `Dryfit, ${files} × ${each}` }, root, ...JOINERY };
}

/** A folder of cabinets, ten a file, that all import one shop. */
export async function hub(cabinets: number, folder: string): Promise<string> {
  const content = await contentOf(10 * 12);
  const text = joineryOf({ ...content, cabinets: content.cabinets.slice(0, 10) } satisfies Content);
  const files = Array.from({ length: cabinets / 10 }, (_, i): [string, string] => [
    `cabinets${i}.joinery`,
    // Each file its own names and widths.
    text
      .replace(/^cabinet (\w+)/gm, `cabinet $1of${i}`)
      .replace(/(?<=parameter wide = )\d+/g, (w) => String(Number(w) + (i % 9))),
  ]);
  return write(folder, 'hub', { ...Object.fromEntries(files), 'shop.joinery': SHOP });
}

function write(folder: string, name: string, files: Readonly<Record<string, string>>): string {
  const root = join(folder, name);
  rmSync(root, { recursive: true, force: true });
  mkdirSync(root, { recursive: true });
  for (const [file, text] of Object.entries(files)) writeFileSync(join(root, file), text);
  return root;
}
