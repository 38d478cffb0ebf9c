import { AstUtils, isAstNode } from 'langium';
import { isMaterial, isNegative } from '../../generated/ast.js';
import type { Case, Cure, Fix } from '../fix.js';
import { nodeOf, textAt } from '../support/node.js';
import { instead } from '../support/place.js';

/** Mends a figure of the shop that cannot be: one below nothing, a range that runs backwards, a grain along no side. */
export const figure: Fix = {
  name: 'figure',
  codes: ['setting-wrong'],
  most: 2,
  *offer(about): Iterable<Cure> {
    yield* withoutSigns(about);
    yield* theOtherWay(about);
    yield* alongASide(about);
  },
};

function* withoutSigns(about: Case): Iterable<Cure> {
  const { source } = about.finding;
  const within = nodeOf(about, isAstNode);
  if (!within) return;
  const signed = AstUtils.streamAst(within)
    .filter(isNegative)
    .filter(({ $cstNode: cst }) => cst !== undefined && cst.offset >= source.start && cst.end <= source.end)
    .flatMap((negative) => (negative.value?.$cstNode ? [instead(negative, negative.value.$cstNode.text)] : []))
    .toArray();
  if (signed.length > 0)
    yield {
      title: `Write ${signed.map(({ text }) => text).join(' and ')}, without a minus`,
      edits: signed,
      preferred: true,
    };
}

function* theOtherWay(about: Case): Iterable<Cure> {
  const text = textAt(about);
  const turned = text.replace(/(\d[\d./"]*(?:\s+mm|\s+in)?)\s+to\s+(\d[\d./"]*(?:\s+mm|\s+in)?)/, '$2 to $1');
  if (turned !== text) yield { title: `Write ${turned}`, edits: [{ ...about.finding.source, text: turned }] };
}

function* alongASide(about: Case): Iterable<Cure> {
  const material = nodeOf(about, isMaterial);
  const [sheet] = material?.sheet ?? [];
  for (const side of [sheet?.length, sheet?.width]) {
    const text = side?.$cstNode?.text;
    if (text !== undefined) yield { title: `Write ${text}`, edits: [{ ...about.finding.source, text }] };
  }
}
