import { proves } from './support/prove.js';

proves('fix-part', 'swap-names', 'move-part', 'say-proud', 'join');
