import type { Reason } from './fit.js';
import { say, type Text } from './text.js';

/** What a reason says; where a share of a length is added, which share of it: "height 700 of lh (1/3 of 700)". */
export const reasonWords = ({ text, share }: Reason): Text =>
  share ? say`${text} (${String(share.part)} of ${share.of})` : say`${text}`;
