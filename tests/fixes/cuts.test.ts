import { proves } from './support/prove.js';

proves('cut-figures', 'end-short', 'milled', 'measured', 'grain', 'other-material');
