/** Values worked out from a list of things, kept while the list has the same things in the same order. */
export class KeptWhileSame<K extends WeakKey, V> {
  private readonly kept = new WeakMap<K, { readonly from: readonly unknown[]; readonly value: V }>();

  get(key: K, from: readonly unknown[], make: () => V): V {
    const kept = this.kept.get(key);
    if (kept && kept.from.length === from.length && kept.from.every((one, i) => one === from[i])) return kept.value;
    const value = make();
    this.kept.set(key, { from, value });
    return value;
  }
}
