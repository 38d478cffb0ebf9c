import type { Finding, FitResult } from '@dryfit/engine';
import type { LangiumDocument } from 'langium';
import type { Cabinet, File } from '../generated/ast.js';
import type { Unit } from '../parser/numbers.js';
import type { JoineryServices } from '../services.js';

/** A stretch of one text, as UTF-16 offsets with `end` exclusive, and what is to stand there instead. */
export interface FileEdit {
  readonly uri: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** A file that is not there yet, and what is to stand in it. */
export interface NewFile {
  readonly uri: string;
  readonly text: string;
}

/** What is done to the files of a workspace. */
export interface Change {
  readonly edits: readonly FileEdit[];
  readonly newFiles?: readonly NewFile[] | undefined;
}

/** One way to cure a finding. */
export interface Cure extends Change {
  /** What it does, as an imperative with its figures and without a full stop. */
  readonly title: string;
  /** What the text most likely means; at most one cure of a finding is. */
  readonly preferred?: boolean | undefined;
}

/** A finding, and all that a fix may look at. */
export interface Case {
  /** As it is told of the cabinet, also where a job's line brings it about. */
  readonly finding: Finding;
  /** The text that the finding is about, which for a job's line may be another than the one that shows it. */
  readonly document: LangiumDocument;
  readonly file: File;
  /** What plain numbers of that file are in. */
  readonly unit: Unit;
  readonly services: JoineryServices;
  /** The cabinet it stands in, with the values written in it. */
  readonly cabinet?: Cabinet | undefined;
  readonly result?: FitResult | undefined;
}

/** A way to cure findings of some checks: a pure function from a case to texts. One file each. */
export interface Fix {
  /** Name of the fix, as its file is called. */
  readonly name: string;
  readonly codes: readonly string[];
  /**
   * Findings that may come up once it is applied, by check, and why: what the cured one has hidden, or what is left
   * for the user to do. Any other new finding keeps a cure from being offered.
   */
  readonly mayFollow?: Readonly<Record<string, string>> | undefined;
  /**
   * Checks whose preferred cure may be made without anybody looking, and why: every size and every slot stays what the
   * text says already. A guess at what was meant, however near, is not of that kind.
   */
  readonly safe?: Readonly<Record<string, string>> | undefined;
  /** How many of its cures are offered for one finding, of those that do cure; all if absent. */
  readonly most?: number | undefined;
  /** Cures to try, the best first; each is proved before anybody sees it. */
  offer(about: Case): Iterable<Cure>;
}
