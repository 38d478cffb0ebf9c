import { proves } from './support/prove.js';

proves('remove-again', 'rename-part', 'remove', 'allow-text', 'make-too', 'take-out-order');
