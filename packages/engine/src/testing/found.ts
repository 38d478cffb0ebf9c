import type { Check, Found } from '../checks/check.js';
import { render, type Text } from '../fit/text.js';
import { workOut } from '../pipeline.js';
import type { Spec } from '../spec/spec.js';

/** The findings of one check, before any silence. */
export const foundBy = (check: Check, spec: Spec): readonly Found[] => [...check.run(workOut(spec))];

/** A message as it reads in millimetres. */
export const words = (text: Text): string => render(text, { units: 'mm' });
