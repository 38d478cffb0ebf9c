import { TextDocument } from 'langium';
import { describe, expect, test } from 'vitest';
import { DiagnosticTag } from 'vscode-languageserver-types';
import { shown } from '../findings/shown.js';
import { FilesInMemory, uriOf } from '../testing/files.fixture.js';
import { toDiagnostic } from './diagnostics.js';

const TEXT = `cabinet Desk {
  parameter spare = 3
  part lh, rh : upright of ply18
  part shelf : level of ply18
  width 600 over lh and rh
  width 500 over lh and rh
  allow slot-near-egde "x"
}
`;

const text = TextDocument.create(uriOf('desk.joinery').toString(), 'joinery', 0, TEXT);
const diagnostics = async (checkPages = false) => {
  const examination = await new FilesInMemory({ 'desk.joinery': TEXT }).examine('desk.joinery');
  return examination.findings.map((finding) =>
    toDiagnostic(shown(finding, examination, TEXT), text, {
      textOf: (uri) => (uri === text.uri ? text : undefined),
      checkPages,
    }),
  );
};
const of = async (code: string, checkPages = false) =>
  (await diagnostics(checkPages)).find((diagnostic) => diagnostic.code === code);

describe('what the editor shows is what was found', () => {
  test('code, place, message with its cure, and what a fix needs', async () => {
    const diagnostic = await of('unknown-check');
    expect(diagnostic).toMatchObject({
      source: 'dryfit',
      severity: 2,
      message: 'there is no check called slot-near-egde that can be allowed\nDid you mean slot-near-edge?',
      data: { code: 'unknown-check', instead: 'slot-near-edge' },
      range: { start: { line: 6, character: 8 }, end: { line: 6, character: 22 } },
    });
    expect(diagnostic?.tags).toBeUndefined();
  });

  test('statements that contradict each other are all places of the finding', async () => {
    const diagnostic = await of('does-not-close');
    const lines = [diagnostic?.range, ...(diagnostic?.relatedInformation ?? []).map(({ location }) => location.range)];
    expect(new Set(lines.map((range) => range?.start.line))).toEqual(new Set([4, 5]));
  });

  test('what nothing uses is faded', async () => {
    expect((await of('never-used'))?.tags).toEqual([DiagnosticTag.Unnecessary]);
  });

  test('a client that shows the pages of checks is given their address, and no other', async () => {
    expect((await of('never-used', true))?.codeDescription).toEqual({ href: 'dryfit-check:/never-used.md' });
    expect(await of('never-used')).not.toHaveProperty('codeDescription');
  });
});
