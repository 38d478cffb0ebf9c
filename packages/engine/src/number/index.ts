export * from './bounded.js';
export * from './format.js';
export {
  constant,
  minus,
  negate,
  ofInput,
  plus,
  product,
  type Quantity,
  quotient,
  scale,
  type Term,
} from './quantity.js';
export { Rational } from './rational.js';
