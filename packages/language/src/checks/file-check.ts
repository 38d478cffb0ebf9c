import type { Finding } from '@dryfit/engine';
import type { LangiumDocument } from 'langium';
import type { File } from '../generated/ast.js';
import type { Places } from '../interpret/source.js';
import type { JoineryServices } from '../services.js';

/** What a check of a whole file may look at. */
export interface FileContext {
  readonly file: File;
  readonly document: LangiumDocument;
  readonly places: Places;
  readonly services: JoineryServices;
}

/** Looks through a file for one kind of mistake. */
export type FileCheck = (context: FileContext) => readonly Finding[];
