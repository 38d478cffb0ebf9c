/** A fence of an example: the word that says what it shows, and a limit's two numbers. */
const FENCE = /^```joinery (fails|passes|limit passes=(\S+) fails=(\S+))[ \t]*$/gm;

/**
 * A check's page with each example's word in front of it: what stands behind a fence is lost where a page is shown as
 * it is meant to be read.
 */
export function pageText(page: string): string {
  return page.replace(FENCE, (_, word: string, passes?: string, fails?: string) => {
    const heading =
      passes === undefined ? `This ${word}:` : `This passes with ${passes} where @ stands, and fails with ${fails}:`;
    return `**${heading}**\n\n\`\`\`joinery`;
  });
}
