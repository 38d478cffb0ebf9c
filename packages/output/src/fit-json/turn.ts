import type { Turn } from '@dryfit/engine';
import { exact } from './lengths.js';

/** A turned frame as fit.json writes it. */
export const turnJson = ({ origin, along }: Turn) => ({
  origin: { x: exact(origin.x), y: exact(origin.y) },
  along: { x: exact(along.x), y: exact(along.y) },
});
