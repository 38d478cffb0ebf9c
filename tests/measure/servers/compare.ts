import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Aim, aimsOf, type Measured, median, quantile } from './aims.js';
import { installPeers, PEERS } from './peers.js';
import { hubRound, type Round, round } from './rounds.js';
import { bare, dryfit, hub, type Programs, type Subject, spread, subjects } from './subjects.js';

const SIZES = [300, 3000] as const;
const HUB = 500;
const SPREAD = 10;

/** Every server starts anew in each round, and the servers take turns, so that what else the machine does falls on all. */
export async function comparedWithPeers(rounds: number): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'dryfit-measure-'));
  const cache = join(process.cwd(), '.cache/measure');
  const programs: Programs = {
    dryfit: join(process.cwd(), 'packages/extension/dist/server.cjs'),
    bare: join(cache, 'bare.cjs'),
    peers: installPeers(join(cache, 'peers')),
  };
  for (const program of [programs.dryfit, programs.bare]) if (!existsSync(program)) throw new Error(`no ${program}`);
  try {
    const all = new Map<string, { subject: Subject; rounds: Round[] }>();
    for (const size of SIZES) {
      for (const subject of await subjects(size, join(folder, String(size)), programs))
        all.set(`${subject.server.name}, ${size}`, { subject, rounds: [] });
    }
    for (const files of [1, SPREAD]) {
      const subject = await spread(files, SIZES[0], join(folder, 'spread'), programs);
      all.set(subject.server.name, { subject, rounds: [] });
    }
    const root = await hub(HUB, join(folder, 'hub'));
    const hubs = { bare: [] as number[], dryfit: [] as number[] };
    for (let i = 0; i < rounds; i++) {
      for (const [name, { subject, rounds: done }] of i % 2 === 0 ? all : [...all].reverse()) {
        console.error(`round ${i + 1} of ${rounds}: ${name}`);
        done.push(await round(subject));
      }
      hubs.bare.push(...(await hubRound(bare(programs.bare), root)));
      hubs.dryfit.push(...(await hubRound(dryfit(programs.dryfit), root)));
    }
    const measured = new Map([...all].map(([name, { rounds: done }]): [string, Measured] => [name, digest(done)]));
    return report(measured, hubs, rounds);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function digest(rounds: readonly Round[]): Measured {
  const of = (pick: (round: Round) => number) => median(rounds.map(pick));
  const all = (pick: (round: Round) => readonly number[]) => rounds.flatMap(pick);
  const keys = all(({ keys: list }) => list);
  return {
    start: of(({ start }) => start),
    open: of(({ open }) => open),
    key: median(keys),
    slowKey: quantile(keys, 0.95),
    processor: of(({ processor }) => processor),
    burst: of(({ burst }) => burst),
    hover: median(all(({ hover }) => hover)),
    hoverAfter: median(all(({ hoverAfter }) => hoverAfter)),
    completion: median(all(({ completion }) => completion)),
    memory: of(({ memory }) => memory),
  };
}

function report(
  measured: ReadonlyMap<string, Measured>,
  hubs: { readonly bare: readonly number[]; readonly dryfit: readonly number[] },
  rounds: number,
): string {
  const rows = [...measured].map(([name, one]) => {
    const figures = [one.start, one.open, one.key, one.slowKey, one.processor, one.burst, one.hover, one.hoverAfter];
    return [
      name,
      ...[...figures, one.completion, one.memory].map((figure) =>
        Number.isNaN(figure) ? '–' : figure.toFixed(figure < 10 ? 1 : 0),
      ),
    ];
  });
  const table = [HEAD, HEAD.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
  const hubMedians = { bare: median(hubs.bare), dryfit: median(hubs.dryfit) };
  const aims = aimsOf(measured, hubMedians, SIZES, SPREAD).map(
    ({ what, ratio, least }: Aim) =>
      `| ${what} | ${ratio.toFixed(2)} | ${least} | ${ratio <= least ? 'met' : '**missed**'} |`,
  );
  const versions = Object.entries(PEERS).map(([name, version]) => `${name} ${version}`);
  return `${table}

Milliseconds and MB, medians of ${rounds} rounds in turn, each server started anew in each; ${versions.join(', ')}. The same parts,
joints and facts for all, one slip among them; a key breaks a name and the next one mends it, and each is waited for
until its findings are told. \`start\` is from the start of the process until it says what it can do; \`processor\` is what a key costs in processor time, user and system.

An edit of a shop that ${HUB} cabinets in ${HUB / 10} files import, until the open file's findings are told: bare Langium
${hubMedians.bare.toFixed(0)} ms, Dryfit ${hubMedians.dryfit.toFixed(0)} ms.

| aim | ratio | at most | |
| --- | --- | --- | --- |
${aims.join('\n')}
`;
}

const HEAD = [
  'server, parts and joints',
  'start',
  'open → findings',
  'key → findings',
  '95 %',
  'processor',
  'burst of 20',
  'hover',
  'hover after a key',
  'completion',
  'memory',
];
