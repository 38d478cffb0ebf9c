/** Emphasis for a terminal; every function gives its text back unchanged where there is none. */
export interface Paint {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly error: (text: string) => string;
  readonly warning: (text: string) => string;
  readonly info: (text: string) => string;
}

const same = (text: string): string => text;

/** No emphasis at all: what emphasis would say is always said in words too. */
export const PLAIN: Paint = { strong: same, faint: same, error: same, warning: same, info: same };
