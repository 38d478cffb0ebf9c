/** The name that the grammar gives a rule: in the parser it carries a mark that keeps it apart from keywords. */
export const plainRuleName = (name: string): string => name.replace(/\P{ASCII}/gu, '');
