import { proves } from './support/prove.js';

proves('join-as-others', 'fix-part', 'swap-names', 'mitre-side', 'move-part', 'say-proud', 'join');
