import { proves } from './support/prove.js';

proves('cut-spacer', 'other-datum', 'change-number', 'add-spacer');
