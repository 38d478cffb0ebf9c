import { Rational, say } from '@dryfit/engine';
import { GrammarUtils } from 'langium';
import { type ConnectFact, isConnectFact, isJoint } from '../generated/ast.js';
import type { Case, Cure, FileEdit, Fix } from './fix.js';
import { writeInto } from './support/braces.js';
import { jointOf, titled } from './support/facts.js';
import { UNUSED } from './support/follow.js';
import { connectOf } from './support/lines.js';

/** Takes another connector of the shop: in this joint, or wherever the cabinet takes the one that does not suit. */
export const otherConnector: Fix = {
  name: 'other-connector',
  codes: [
    'slot-breaks-through',
    'joint-bottoms-out',
    'connector-too-long',
    'connector-binds',
    'thin-wall',
    'mitre-no-room',
    'pair-too-short',
    'slots-collide',
    'slot-near-edge',
    'references-differ',
    'wrong-face-hides',
  ],
  mayFollow: UNUSED,
  most: 2,
  *offer(about): Iterable<Cure> {
    const now = connectOf(about)?.connector;
    const connectors = about.result?.spec.shop.connectors;
    const joint = jointOf(about);
    if (now === undefined || !connectors || !joint) return;
    const own = joint.facts.find(isConnectFact);
    const all = everywhere(about, now);
    const others = [...connectors.values()].filter(({ name }) => name !== now);
    others.sort((a, b) => size(b.plunge).compare(size(a.plunge)));
    for (const { name, across, along } of others) {
      const what = say`${name}, ${along} along and ${across} across`;
      const here = own ? renamed(own, name) : copied(about, name);
      if (here)
        yield { title: titled(say`Take ${what}, in this joint`, about.unit), edits: [writeOrEdit(joint, here)] };
      if (all.length > 1 || (all.length === 1 && !own))
        yield {
          title: titled(say`Take ${what}, wherever the cabinet has ${now}`, about.unit),
          edits: all.flatMap((fact) => renamed(fact, name) ?? []),
        };
    }
  },
};

const size = ({ face, edge }: { readonly face: Rational; readonly edge: Rational }): Rational =>
  Rational.max(face, edge);

const writeOrEdit = (joint: NonNullable<ReturnType<typeof jointOf>>, here: FileEdit | string): FileEdit =>
  typeof here === 'string' ? writeInto(joint, here) : here;

/** Every place in the cabinet that names a connector. */
function everywhere({ cabinet }: Case, name: string): readonly ConnectFact[] {
  return (cabinet?.items ?? [])
    .flatMap((item) => (isConnectFact(item) ? [item] : isJoint(item) ? item.facts.filter(isConnectFact) : []))
    .filter(({ connector }) => connector?.$refText === name);
}

function renamed(fact: ConnectFact, name: string): FileEdit | undefined {
  const cst = GrammarUtils.findNodeForProperty(fact.$cstNode, 'connector');
  const uri = cst?.root.astNode.$document?.uri.toString();
  return cst && uri !== undefined ? { uri, start: cst.offset, end: cst.end, text: name } : undefined;
}

/** The cabinet's own line with another connector. */
function copied({ cabinet }: Case, name: string): string | undefined {
  const line = cabinet?.items.find(isConnectFact);
  const cst = GrammarUtils.findNodeForProperty(line?.$cstNode, 'connector');
  const text = line?.$cstNode?.text;
  if (!line?.$cstNode || !cst || text === undefined) return undefined;
  const [from, to] = [cst.offset - line.$cstNode.offset, cst.end - line.$cstNode.offset];
  return `${text.slice(0, from)}${name}${text.slice(to)}`.replace(/\s+/g, ' ');
}
