import { proves } from './support/prove.js';

proves('plane', 'side', 'unit', 'whole', 'offsets', 'figure', 'cut-depth');
