import type { LangiumCoreServices } from 'langium';
import type { Files } from './scope/files.js';

/** What the language adds to Langium's own services. */
export interface JoineryAddedServices {
  readonly joinery: {
    readonly Files: Files;
  };
}

export type JoineryServices = LangiumCoreServices & JoineryAddedServices;
