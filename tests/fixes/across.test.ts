import { proves } from './support/prove.js';

proves('reference', 'centred', 'move-across', 'flush', 'even-lines');
