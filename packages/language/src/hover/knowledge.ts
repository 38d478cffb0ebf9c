import type { FitResult, PartId, Shop, Units } from '@dryfit/engine';
import type { AstNode, LeafCstNode } from 'langium';
import type { Cabinet, File, Import, JobLine } from '../generated/ast.js';

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
  /** A cabinet as a line of a job makes it. */
  made(line: JobLine): Fitted | undefined;
  /** A picture of a part with its slots, as the address of an image; undefined where none is wanted or made. */
  picture?(result: FitResult, part: PartId, units: Units): string | undefined;
  /** The file that an import brings in. */
  imported(line: Import): File | undefined;
  /** What a file draws on. */
  shop(file: File): Shop;
  /** All lines of jobs that make a cabinet. */
  jobLines(cabinet: Cabinet): readonly JobLine[];
  /** What a name stands for, whether it is given or used there. */
  declaration(name: LeafCstNode): AstNode | undefined;
}
