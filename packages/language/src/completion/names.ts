import { type AstNode, AstUtils } from 'langium';
import { type Cabinet, isCabinet, isParameter, isParameterUse, type Parameter } from '../generated/ast.js';
import { textOf } from '../interpret/source.js';
import { namesOfCabinet } from '../scope/names.js';
import { type Offer, RANK } from './offer.js';
import { isAt, type Situation } from './situation.js';

/** Parameters that an expression may use: not the one it is the value of, nor one that rests on that. */
export function parameterOffers({ cabinet, tail, offset }: Situation): Offer[] {
  if (cabinet === undefined) return [];
  const own = /^parameter (\S+)/.exec(tail)?.[1];
  const counts = /^parts .*?\S+ (.* to )?$/.test(`${tail} `) || (own !== undefined && tail.includes(': count'));
  return declared(cabinet)
    .filter((parameter) => parameter.name !== own && !isAt(parameter, offset) && !restsOn(parameter, own, new Set()))
    .map((parameter) => parameterOffer(parameter, Boolean(parameter.count) === counts ? RANK.also : RANK.unfit));
}

/** Parameters that a line of a job can still give a value: `2 of Base(wide = 450, …`. */
export function argumentOffers({ around, file, tail }: Situation): Offer[] {
  const line = /^.*\bof (\S+) \((.*)$/.exec(`${tail} `);
  const cabinet = around.names(file, 'Cabinet').get(line?.[1] ?? '');
  if (!isCabinet(cabinet)) return [];
  const given = new Set([...(line?.[2] ?? '').matchAll(/(\S+) =/g)].map(([, name]) => name));
  return declared(cabinet)
    .filter(({ name }) => !given.has(name))
    .map((parameter) => ({ ...parameterOffer(parameter, RANK.fits), insert: [`${parameter.name} = `] }));
}

function parameterOffer(parameter: Parameter, rank: number): Offer {
  const value = parameter.value === undefined ? '' : `= ${textOf(parameter.value)}`;
  return {
    label: parameter.name,
    kind: 'parameter',
    rank,
    detail: parameter.count ? `count ${value}` : value,
    names: { type: 'Parameter', name: parameter.name },
  };
}

const declared = (cabinet: Cabinet): readonly Parameter[] =>
  [...namesOfCabinet(cabinet).parameters.values()].filter(isParameter);

function restsOn(parameter: Parameter, name: string | undefined, seen: Set<Parameter>): boolean {
  if (name === undefined || seen.has(parameter) || parameter.value === undefined) return false;
  seen.add(parameter);
  return AstUtils.streamAst(parameter.value as AstNode)
    .filter(isParameterUse)
    .some(({ parameter: used }) => used.$refText === name || (used.ref ? restsOn(used.ref, name, seen) : false));
}

/** Cabinets that a job may want: those of its own file first. */
export function cabinetOffers({ around, file }: Situation): Offer[] {
  return [...around.names(file, 'Cabinet')].map(([name, node]) => ({
    label: name,
    kind: 'cabinet',
    rank: node.$container === file ? RANK.fits : RANK.also,
    detail: isCabinet(node) ? parametersOf(node) : undefined,
    names: { type: 'Cabinet', name },
  }));
}

function parametersOf(cabinet: Cabinet): string {
  const names = declared(cabinet).map(({ name }) => name);
  return names.length === 0 ? 'no parameters' : names.join(', ');
}
