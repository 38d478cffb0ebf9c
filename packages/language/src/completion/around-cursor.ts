import type { LangiumParser } from 'langium';
import { type Fact, isCabinet, isFile, isJoint } from '../generated/ast.js';

/**
 * The facts in the braces of a joint, but for the one that is being written: those in front of the cursor and those
 * below its line, each read by themselves, since an unfinished fact would take the next line for its own end.
 * @param text that of the file
 * @param joint offset of the joint's first word
 * @param cursor an offset in its braces
 */
export function factsAround(text: string, joint: number, cursor: number, parser: LangiumParser): readonly Fact[] {
  const before = text.slice(joint, cursor);
  const line = text.indexOf('\n', cursor);
  const below = line < 0 ? '' : text.slice(line, blockEnd(text, line));
  const head = before.slice(0, before.indexOf('{') + 1);
  return [...factsOf(`${before}\n}`, parser), ...(below.trim() === '' ? [] : factsOf(`${head}${below}\n}`, parser))];
}

/** Where the braces that are open at an offset close; facts have none of their own. */
function blockEnd(text: string, offset: number): number {
  const end = text.slice(offset).search(/[{}]/);
  return end < 0 ? text.length : offset + end;
}

function factsOf(joint: string, parser: LangiumParser): readonly Fact[] {
  const { value } = parser.parse(`cabinet C {\n${joint}\n}`);
  const [cabinet] = isFile(value) ? value.entries : [];
  const [item] = isCabinet(cabinet) ? cabinet.items : [];
  return isJoint(item) ? item.facts : [];
}
