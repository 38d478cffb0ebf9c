import { proves } from './support/prove.js';

proves('plane', 'side', 'unit', 'whole', 'offsets', 'sign', 'cut-depth');
