import { type Fact, type HostPair, type JointStatement, type PlaneRef, say, type Written } from '@dryfit/engine';
import type { AstNode } from 'langium';
import { factMissing } from '../checks/fact-missing.js';
import { notOfThisKind } from '../checks/not-of-this-kind.js';
import { writtenTwice } from '../checks/written-twice.js';
import type {
  AcrossFact,
  ConnectFact,
  CutFact,
  DatumFact,
  End,
  Fact as FactNode,
  Joint,
  OuterFact,
  ReferenceFact,
  SpacerFact,
  Verb,
} from '../generated/ast.js';
import { readAcross, readConnect, readDatum, readReference } from './connect.js';
import { readCentred, readFlush, readOpenings, readSideFact } from './facts.js';
import { readWritten } from './measure.js';
import { readPlane } from './plane.js';
import type { StatementReading } from './reading.js';
import { readSilences } from './silences.js';
import { evaluateLength } from './values.js';
import { wordsOfEnd, wordsOfPlane, wordsOfRefs } from './words.js';

/** What a joint is called: its verb and the parts it names. */
export function idOfJoint(node: Joint): string {
  const pairs = node.between.map(({ low, high }) => `${wordsOfEnd(low)} and ${wordsOfEnd(high)}`);
  const hosts = pairs.length > 0 ? `between ${pairs.join(', ')}` : `to ${node.to.map(wordsOfPlane).join(', ')}`;
  return `${node.verb} ${wordsOfRefs(node.entering)} ${hosts}`;
}

/** Id of a joint's statement in its cabinet: of several that are called the same, the later ones are numbered. */
export function statementOf(node: Joint): string {
  const id = idOfJoint(node);
  const before = node.$container.items
    .slice(0, node.$containerIndex)
    .filter((item) => item.$type === 'Joint' && idOfJoint(item) === id);
  return before.length === 0 ? id : `${id} (${before.length + 1})`;
}

/** A joint with every fact that can be read; undefined without a part that enters or one it meets. */
export function readJoint(node: Joint, reading: StatementReading): JointStatement | undefined {
  const { parts, places, statement: id } = reading;
  if (node.verb === undefined) return undefined;
  const entering = parts.each(node.entering);
  const between = node.between
    .map((pair) => readPair(pair.low, pair.high, reading))
    .filter((pair) => pair !== undefined);
  const to = node.to.map((plane) => readPlane(plane, reading)).filter((plane) => plane !== undefined);
  const facts = onlyOnce(node, reading);
  const silences = readSilences(
    node.facts.filter((fact) => fact.$type === 'Silence'),
    reading,
  );
  const placed = readPlacing(facts, entering, reading);
  const read = readRest(node, facts, reading);
  if (entering.length === 0 || between.length + to.length === 0) return undefined;
  return {
    kind: 'joint',
    id,
    source: places.of(node),
    silences,
    verb: node.verb,
    entering,
    enteringSource: sourceOfEntering(node, reading),
    between,
    to,
    facts: placed,
    ...read,
  };
}

function sourceOfEntering(node: Joint, { places }: StatementReading): PlaneRef['source'] {
  const [first, last] = [node.entering[0], node.entering.at(-1)];
  return first && last ? { ...places.of(first), end: places.of(last).end } : places.of(node);
}

function readPair(low: End | undefined, high: End | undefined, reading: StatementReading): HostPair | undefined {
  const [a, b] = [low, high].map((end) => {
    const part = reading.parts.one(end?.ref);
    return end && part !== undefined ? { part, side: end.side, source: reading.places.of(end) } : undefined;
  });
  return a && b ? { low: a, high: b } : undefined;
}

function readPlacing(
  facts: readonly FactNode[],
  entering: readonly string[],
  reading: StatementReading,
): readonly Fact[] {
  const read = (fact: FactNode): Fact | undefined => {
    switch (fact.$type) {
      case 'FlushFact':
        return readFlush(fact, reading);
      case 'SideFact':
        return readSideFact(fact, entering, reading);
      case 'CentredFact':
        return readCentred(fact, reading);
      case 'OpeningsFact':
        return readOpenings(fact, reading);
      default:
        return undefined;
    }
  };
  return facts.map(read).filter((fact) => fact !== undefined);
}

type Rest = Omit<
  JointStatement,
  'kind' | 'id' | 'source' | 'silences' | 'verb' | 'entering' | 'enteringSource' | 'between' | 'to' | 'facts'
>;

function readRest(node: Joint, facts: readonly FactNode[], reading: StatementReading): Rest {
  const { places } = reading;
  const datum = first<DatumFact>(facts, 'DatumFact');
  const reference = first<ReferenceFact>(facts, 'ReferenceFact');
  const connect = first<ConnectFact>(facts, 'ConnectFact');
  const across = first<AcrossFact>(facts, 'AcrossFact');
  const spacer = first<SpacerFact>(facts, 'SpacerFact');
  const outer = first<OuterFact>(facts, 'OuterFact');
  const cut = (word: CutFact['cut']) => {
    const fact = facts.find((other): other is CutFact => other.$type === 'CutFact' && other.cut === word);
    return fact && readWritten(fact.length, reading);
  };
  demand(node, facts, reading);
  return {
    connect: connect && readConnect(connect, reading),
    datum: datum && readDatum(datum, reading),
    reference: reference && readReference(reference, places),
    across: across && readAcross(across, reading),
    depth: cut('depth'),
    lap: cut('lap'),
    width: cut('width'),
    clearance: cut('clearance'),
    stopped: cut('stopped'),
    spacerCut: spacer && { source: places.of(spacer) },
    leaveOut: facts
      .filter((fact) => fact.$type === 'LeaveOutFact')
      .flatMap(({ lines }) =>
        lines.flatMap((line): Written[] => {
          const length = evaluateLength(line, reading);
          const source = places.expression(line);
          return length ? [{ ...length, source, text: line.$cstNode?.text ?? '' }] : [];
        }),
      ),
    outer: outer?.side && { side: outer.side, source: places.of(outer) },
  };
}

/** Which joints a figure is cut in; the other facts go into any. */
export const CUT_IN: Readonly<Record<CutFact['cut'], readonly Verb[]>> = {
  depth: ['groove', 'house'],
  width: ['groove', 'house'],
  lap: ['rebate'],
  clearance: ['groove', 'house', 'rebate', 'rest'],
  stopped: ['groove', 'house', 'rebate'],
};

const NOUN: Readonly<Record<Verb, string>> = {
  butt: 'a butt joint',
  mitre: 'a mitre',
  groove: 'a groove',
  rebate: 'a rebate',
  house: 'a housing',
  rest: 'a part that only rests',
};

/** Leaves out facts of which there can be one and that is written already, and those this joint does not have. */
function onlyOnce(node: Joint, reading: StatementReading): readonly FactNode[] {
  const written = new Map<string, AstNode>();
  return node.facts.filter((fact) => {
    const key = keyOf(fact);
    if (key === undefined) return true;
    const refused = whyRefused(node.verb, fact);
    if (refused !== undefined) {
      const message = say`${NOUN[node.verb]} has no ${key}${refused}`;
      reading.report(notOfThisKind({ source: reading.places.of(fact), message, cure: say`Take it out.` }));
      return false;
    }
    const before = written.get(key);
    if (!before) {
      written.set(key, fact);
      return true;
    }
    reading.report(
      writtenTwice({
        source: reading.places.of(fact),
        message: say`${key} is written twice in this joint`,
        cure: say`Take one of the two out.`,
        related: [{ message: say`first here`, source: reading.places.of(before) }],
      }),
    );
    return false;
  });
}

/** What a fact says of a joint, for facts that say it once. */
export const keyOf = (fact: FactNode): string | undefined =>
  fact.$type === 'CutFact' ? fact.cut : SAID_ONCE[fact.$type];

const SAID_ONCE: Partial<Record<FactNode['$type'], string>> = {
  ConnectFact: 'connect',
  DatumFact: 'datum',
  ReferenceFact: 'reference',
  AcrossFact: 'position across the joint',
  SpacerFact: 'spacer',
  OuterFact: 'outer side',
  CentredFact: 'centred',
  OpeningsFact: 'openings',
};

const first = <T extends FactNode>(facts: readonly FactNode[], type: T['$type']): T | undefined =>
  facts.find((fact): fact is T => fact.$type === type);

function whyRefused(verb: Verb, fact: FactNode): string | undefined {
  if (fact.$type === 'CutFact' && fact.cut !== undefined && !CUT_IN[fact.cut].includes(verb)) {
    return `: ${CUT_IN[fact.cut]
      .map((other) => NOUN[other])
      .join(', ')
      .replace(/, ([^,]*)$/, ' or $1')} has one`;
  }
  if (fact.$type === 'OuterFact' && verb !== 'mitre') return ': only a mitre has its toe on one';
  if (fact.$type === 'ConnectFact' && verb === 'rest' && fact.none === undefined) return ': nothing holds it';
  return undefined;
}

const NEEDED: Partial<Record<Verb, CutFact['cut']>> = { groove: 'depth', house: 'depth', rebate: 'lap' };

function demand(node: Joint, facts: readonly FactNode[], reading: StatementReading): void {
  const cut = NEEDED[node.verb];
  if (cut === undefined || facts.some((fact) => fact.$type === 'CutFact' && fact.cut === cut)) return;
  reading.report(
    factMissing({
      source: reading.places.property(node, 'verb'),
      message: say`${NOUN[node.verb]} needs ${cut === 'lap' ? 'the lap that the part enters it by' : 'its depth'}`,
      cure: say`Write it in the braces, as in ${cut} 8.`,
    }),
  );
}
