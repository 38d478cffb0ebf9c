import { proves } from './support/prove.js';

proves('say-how', 'allow');
