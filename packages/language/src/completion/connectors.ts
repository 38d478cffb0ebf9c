import { axisOf, type Connector, type Machine, type Material, Rational, type Shop } from '@dryfit/engine';
import type { Lengths } from '../hover/lengths.js';
import type { Named } from './head.js';
import { type Offer, RANK } from './offer.js';
import { foundJoints, shortestRun } from './run.js';
import type { Situation } from './situation.js';
import { type Standing, thicknessOf } from './standing.js';

/** Connectors: first those that the sheets at hand can take, then the others with what keeps them out. */
export function connectorOffers(situation: Situation, lengths: Lengths): Offer[] {
  const { around, file } = situation;
  const shop = around.shop(file);
  const boards = boardsOf(situation, shop);
  const run = shortestRun(foundJoints(situation));
  const length = run?.to.sub(run.from);
  return [...around.names(file, 'Connector').keys()].map((name) => {
    const connector = shop.connectors.get(name);
    const why = connector && whyNot(connector, shop, boards, length, lengths);
    const detail = why ?? (connector && sizeOf(connector, lengths));
    return {
      label: name,
      kind: 'stock',
      rank: why ? RANK.unfit : RANK.fits,
      detail,
      names: { type: 'Connector', name },
    };
  });
}

/** Parts by the way they meet the connector: in their edge or in their face. */
interface Boards {
  readonly edge: readonly Board[];
  readonly face: readonly Board[];
}

interface Board {
  readonly part: string;
  readonly thickness: Rational;
}

function whyNot(
  { plunge, thickness, along, machine: name }: Connector,
  shop: Shop,
  { edge, face }: Boards,
  run: Rational | undefined,
  lengths: Lengths,
): string | undefined {
  const machine = shop.machines.get(name);
  if (!machine) return `no machine ${name} in sight`;
  const { skin, wall, slotToEdge } = shop.limits;
  const deep = plunge.face.add(skin);
  const thin = face.find((board) => board.thickness.lt(deep));
  if (thin)
    return `goes ${lengths.of(plunge.face)} deep and needs ${lengths.of(deep)}, ${thin.part} is ${lengths.of(thin.thickness)} thick`;
  const wide = Rational.max(machine.kerf, thickness).add(wall.mul(Rational.TWO));
  const narrow = edge.find((board) => board.thickness.lt(wide));
  if (narrow)
    return `needs ${lengths.of(wide)} with a wall beside it, ${narrow.part} is ${lengths.of(narrow.thickness)} thick`;
  const least = along.add(slotToEdge.mul(Rational.TWO));
  return run?.lt(least) ? `needs ${lengths.of(least)}, the run is ${lengths.of(run)}` : undefined;
}

const sizeOf = ({ shape, along, across, thickness }: Connector, lengths: Lengths): string =>
  shape === 'dowel'
    ? `dowel ${lengths.product([thickness, across])}`
    : `${shape} ${lengths.product([along, across, thickness])}`;

/** In a joint, its own parts; for the whole cabinet, all that a joint which takes its connectors brings together. */
function boardsOf({ head, axes, parts, cabinet }: Situation, shop: Shop): Boards {
  const board = (name: string): Board[] => {
    const material = shop.materials.get(parts.get(name)?.material ?? '');
    return material ? [{ part: name, thickness: thicknessOfSheet(material) }] : [];
  };
  if (head === undefined) {
    const met = cabinet?.items.flatMap((item) =>
      item.$type === 'Joint' && (item.verb === 'butt' || item.verb === 'mitre') ? item.entering : [],
    );
    return { edge: once(met?.map(({ part }) => part?.$refText) ?? []).flatMap(board), face: [] };
  }
  const edge: Board[] = [];
  const face: Board[] = [];
  const meets = ({ name, side }: Named, axis = side && axisOf(side)) => {
    const standing: Standing | undefined = parts.get(name);
    const flat = axis !== undefined && standing !== undefined && thicknessOf(standing) === axis;
    (flat ? face : edge).push(...board(name));
  };
  const [axis] = axes?.contact ?? [];
  if (head.verb !== 'mitre')
    for (const host of [...head.pairs.flat(), ...head.to]) meets(host, host.side ? undefined : axis);
  for (const part of head.entering) meets({ ...part, side: undefined }, axis);
  return { edge, face };
}

/** As measured where it is, as thin as it may come. */
function thicknessOfSheet({ thickness, measured }: Material): Rational {
  const { value, tolerance } = measured ?? thickness;
  return tolerance ? value.sub(tolerance.minus) : value;
}

const once = (names: readonly (string | undefined)[]): readonly string[] => [
  ...new Set(names.filter((name) => name !== undefined)),
];

/** Which machine cuts for which connector. */
const KIND_FOR = { biscuit: 'disc', 'loose tenon': 'mortiser', dowel: 'drill' } as const;

/** Machines for a connector: those of the kind that cuts for it first. */
export function machineOffers({ around, file, entry }: Situation, lengths: Lengths): Offer[] {
  const shape = entry?.$type === 'Connector' ? entry.shape?.replace('loosetenon', 'loose tenon') : undefined;
  const wanted =
    shape !== undefined && Object.hasOwn(KIND_FOR, shape) ? KIND_FOR[shape as keyof typeof KIND_FOR] : undefined;
  const { machines } = around.shop(file);
  return [...around.names(file, 'Machine').keys()].map((name) => {
    const machine = machines.get(name);
    const unfit = machine !== undefined && wanted !== undefined && machine.kind !== wanted;
    return {
      label: name,
      kind: 'stock',
      rank: unfit ? RANK.unfit : RANK.fits,
      detail: machine && machineWords(machine, unfit ? shape : undefined, lengths),
      names: { type: 'Machine', name },
    };
  });
}

function machineWords({ kind, diameter }: Machine, unfitFor: string | undefined, lengths: Lengths): string {
  const tool = `${{ disc: 'cutter', mortiser: 'bit', drill: 'drill' }[kind]} ${lengths.unit(diameter)}`;
  return unfitFor === undefined ? tool : `${tool}: cuts no slot for a ${unfitFor}`;
}
