/** What a name is made of, as the grammar's terminal ID has it. */
const LETTER = '[\\p{L}\\d_]';
const whole = (pattern) => `(?<!${LETTER})(?:${pattern})(?!${LETTER})`;
const oneOf = (words) => [...words].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).join('|');
const capture = (name) => ({ name: `${name}.joinery` });

/**
 * The generator's colours, which know keywords, comments and strings, told apart by the grammar's own rules: words
 * for sides, extents and attitudes, words that give a name, checks that are allowed, operators, numbers with their
 * units. Names that are also words are the server's to colour, by what they stand for.
 */
export function refine(textMate, grammar) {
  const [sides, extents, attitudes, verbs] = ['Side', 'Extent', 'Attitude', 'Verb'].map((rule) =>
    wordsOf(rule, grammar),
  );
  const givesName = [...grammar.matchAll(/'(\w+)' name=ID/g)].map(([, word]) => word);
  const told = new Set([...sides, ...extents, ...attitudes, ...verbs]);
  const others = keywordsOf(textMate).filter((word) => !told.has(word));
  const string = textMate.patterns.find(({ name }) => name?.startsWith('string.'));
  const comments = textMate.patterns.find(({ include }) => include === '#comments');
  const { 'string-character-escape': _noEscapes, ...repository } = textMate.repository;
  return {
    ...textMate,
    patterns: [
      comments,
      {
        match: `(?<!${LETTER})(allow)\\s+([\\p{L}_]${LETTER}*(?:-${LETTER}+)*)`,
        captures: { 1: capture('keyword.control'), 2: capture('entity.name.function.check') },
      },
      {
        match: `(?<!${LETTER})(${oneOf(givesName)})\\s+(?!(?:${oneOf(sides)})(?!${LETTER}))([\\p{L}_]${LETTER}*)`,
        captures: { 1: capture('storage.type'), 2: capture('entity.name.type') },
      },
      { name: 'constant.language.side.joinery', match: whole(oneOf(sides)) },
      { name: 'support.type.property-name.joinery', match: whole(oneOf(extents)) },
      { name: 'storage.modifier.joinery', match: whole(oneOf(attitudes)) },
      { name: 'keyword.control.joint.joinery', match: whole(oneOf(verbs)) },
      { name: 'keyword.control.joinery', match: whole(oneOf(others)) },
      // Before strings: the inch mark of `3/4"` opens none.
      { name: 'constant.numeric.joinery', match: `(?<!${LETTER})${numberOf(grammar)}` },
      { name: 'keyword.operator.joinery', match: '\\+/-|[±=*/+:%-]' },
      { ...string, end: '"|$', patterns: [] },
    ],
    repository,
  };
}

/** Every keyword, as the generator has found them. */
function keywordsOf(textMate) {
  const pattern = textMate.patterns.find(({ name }) => name?.startsWith('keyword.control'))?.match;
  const words = /^\\b\((.*)\)\\b$/.exec(pattern)?.[1];
  if (words === undefined) throw new Error('the generator writes its keywords in another way now');
  return words.split('|');
}

/** The words a rule chooses from. */
function wordsOf(rule, grammar) {
  const body = new RegExp(`^${rule} returns ${rule}: ([^;]*);`, 'm').exec(grammar)?.[1];
  if (body === undefined) throw new Error(`the grammar has no rule ${rule}`);
  return [...body.matchAll(/'(\w+)'/g)].map(([, word]) => word);
}

/** The grammar's own NUMBER; the language has no escapes. */
function numberOf(grammar) {
  const number = /terminal NUMBER:\s*\/(.*)\/;/.exec(grammar)?.[1];
  if (number === undefined) throw new Error('the grammar has no terminal NUMBER with a regular expression');
  return number;
}
