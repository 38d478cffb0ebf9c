import { proves } from './support/prove.js';

proves('move-line', 'skip-within', 'leave-out', 'two-lines');
