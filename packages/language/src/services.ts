import type { LangiumCoreServices, URI } from 'langium';
import type { Fits } from './fits/fits.js';
import type { Shops } from './interpret/stock/shops.js';
import type { Files } from './scope/files.js';

/** What the language adds to Langium's own services. */
export interface JoineryAddedServices {
  readonly joinery: {
    readonly Files: Files;
    readonly Shops: Shops;
    readonly Fits: Fits;
    /** True if another known file imports this one. */
    readonly isImported: (uri: URI) => boolean;
  };
}

export type JoineryServices = LangiumCoreServices & JoineryAddedServices;
