import type { FitResult, Shop } from '@dryfit/engine';
import type { AstNode, LeafCstNode } from 'langium';
import type { Cabinet, File, JobLine } from '../generated/ast.js';

/** What was found for a cabinet. */
export interface Fitted {
  readonly result: FitResult;
  /** It is that of an earlier text, since the present one is broken. */
  readonly stale: boolean;
}

/** What a hover needs beside the tree it stands in. */
export interface Knowledge {
  /** The fit of a cabinet with the values written in it. */
  fitted(cabinet: Cabinet): Fitted | undefined;
  /** What a file draws on. */
  shop(file: File): Shop;
  /** All lines of jobs that make a cabinet. */
  jobLines(cabinet: Cabinet): readonly JobLine[];
  /** What a name stands for, whether it is given or used there. */
  declaration(name: LeafCstNode): AstNode | undefined;
}
