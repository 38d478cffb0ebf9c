import { proves } from './support/prove.js';

proves('take-out', 'resize', 'fewer-parts', 'touching');
