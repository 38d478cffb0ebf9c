export { type Choice, type Cover, cheapestCover } from './cover.js';
