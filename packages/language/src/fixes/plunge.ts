import { type Connector, Rational, say } from '@dryfit/engine';
import { isConnector } from '../generated/ast.js';
import { unitOf } from '../interpret/units.js';
import { isLibrary } from '../library/library.js';
import { fileOf } from '../scope/imports.js';
import type { Case, Cure, FileEdit, Fix } from './fix.js';
import { titled } from './support/facts.js';
import { lengthIn, writtenAs } from './support/figures.js';
import { connectOf, fittedOf } from './support/lines.js';
import { documentAt } from './support/numbers.js';
import { instead } from './support/place.js';

interface Depths {
  readonly face: Rational;
  readonly edge: Rational;
}

/** Plunges deeper or less deep for a connector, wherever the shop uses it. */
export const plunge: Fix = {
  name: 'plunge',
  codes: ['joint-bottoms-out', 'connector-binds', 'connector-too-long', 'slot-breaks-through', 'mitre-no-room'],
  most: 1,
  *offer(about): Iterable<Cure> {
    const name = connectOf(about)?.connector;
    const connector = name === undefined ? undefined : about.result?.spec.shop.connectors.get(name);
    if (!connector) return;
    for (const depths of wanted(about, connector)) {
      const edit = written(about, connector, depths);
      const how = depths.face.equals(depths.edge)
        ? say`${depths.face}`
        : say`${depths.face} in face, ${depths.edge} in edge`;
      if (edit)
        yield { title: titled(say`Plunge ${how} for ${connector.name}, in the whole shop`, about.unit), edits: [edit] };
    }
  },
};

function* wanted(about: Case, { plunge: now, across, clearance = Rational.ZERO }: Connector): Iterable<Depths> {
  const { code, data } = about.finding;
  const short = lengthIn(data?.short);
  const half = short && tenth(short.div(Rational.TWO));
  if ((code === 'joint-bottoms-out' || code === 'connector-binds') && half)
    yield { face: now.face.add(half), edge: now.edge.add(half) };
  const least = lengthIn(data?.plunge);
  if (code === 'connector-too-long' && least)
    yield { face: Rational.max(now.face, least), edge: Rational.max(now.edge, least) };
  const most = lengthIn(data?.most);
  if (!most || most.sign() <= 0) return;
  if (code === 'mitre-no-room') yield { face: most, edge: most };
  if (code !== 'slot-breaks-through') return;
  const rest = across.add(clearance).sub(most);
  const inFace = fittedOf(about)?.halves.find(({ part }) => about.finding.about.parts?.includes(part))?.role === 'face';
  yield inFace
    ? { face: most, edge: Rational.max(rest, now.edge) }
    : { face: Rational.max(rest, now.face), edge: most };
}

const tenth = (depth: Rational): Rational => depth.mul(Rational.of(10)).ceil().div(Rational.of(10));

function written(about: Case, { source, name }: Connector, { face, edge }: Depths): FileEdit | undefined {
  const document = documentAt(about, source);
  const file = fileOf(document);
  const node = file?.entries.filter(isConnector).find((entry) => entry.name === name)?.plunge[0];
  if (!document || !file || !node || isLibrary(document.uri)) return undefined;
  const [a, b] = [face, edge].map((depth) => writtenAs(depth, unitOf(file)));
  return instead(node, face.equals(edge) ? `${a}` : `${a} in face, ${b} in edge`);
}
