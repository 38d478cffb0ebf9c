/** What the word behind a fence says of the example in it; it is lost where a page is shown as it is meant to be read. */
const HEADINGS: Readonly<Record<string, string>> = {
  fails: 'This fails:',
  passes: 'This passes:',
  limit: 'This is just within the limit:',
};

/** A check's page with each example's word in front of it. */
export function pageText(page: string): string {
  return page.replace(/^```joinery (\w+)[ \t]*$/gm, (fence, word: string) =>
    HEADINGS[word] === undefined ? fence : `**${HEADINGS[word]}**\n\n\`\`\`joinery`,
  );
}
