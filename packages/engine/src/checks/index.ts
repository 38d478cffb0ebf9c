export { checks } from '../generated/checks.js';
