import { proves } from './support/prove.js';

proves('join-as-others', 'fix-part', 'swap-names', 'move-part', 'say-proud', 'join');
