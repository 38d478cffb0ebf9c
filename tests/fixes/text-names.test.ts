import { proves } from './support/prove.js';

proves(
  'did-you-mean',
  'import-it',
  'import-path',
  'create-import',
  'declare-part',
  'part-number',
  'other-name',
  'one-import',
);
