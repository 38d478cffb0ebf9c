import { proves } from './support/prove.js';

proves('other-connector', 'plunge', 'connect-by', 'connect-none', 'loosen');
