import type { AstNodeDescription, LocalSymbols, ScopeComputation } from 'langium';
import { EMPTY_STREAM } from 'langium';

/** Nothing is visible by itself: names are looked up through imports and cabinets, in maps built when first asked. */
export class JoineryScopeComputation implements ScopeComputation {
  collectExportedSymbols(): Promise<AstNodeDescription[]> {
    return Promise.resolve([]);
  }

  collectLocalSymbols(): Promise<LocalSymbols> {
    return Promise.resolve(NONE);
  }
}

const NONE: LocalSymbols = { has: () => false, getStream: () => EMPTY_STREAM };
