import type { Highs } from 'highs';

type Load = () => Promise<Highs>;

let loading: Promise<Highs> | undefined;

/**
 * The solver of linear programs, loaded when it is first wanted: it is large, and most of what the engine does has no
 * need of it.
 */
export function solver(): Promise<Highs> {
  loading ??= import('highs').then((module) => loaderIn(module)());
  return loading;
}

/** Its declarations are those of the CommonJS form, in which the loader stands one level deeper. */
function loaderIn(module: { readonly default: unknown }): Load {
  const { default: outer } = module;
  if (typeof outer === 'function') return outer as Load;
  return (outer as { readonly default: Load }).default;
}
