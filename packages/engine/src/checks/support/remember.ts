import type { CheckContext } from '../check.js';

/** Works something out once for each cabinet that is checked, however many checks ask for it. */
export function perContext<T>(find: (context: CheckContext) => T): (context: CheckContext) => T {
  const known = new WeakMap<CheckContext, { readonly it: T }>();
  return (context) => {
    const before = known.get(context);
    if (before) return before.it;
    const it = find(context);
    known.set(context, { it });
    return it;
  };
}
