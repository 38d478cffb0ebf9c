import type { Shop } from '@dryfit/engine';

/**
 * A shop that notes which of its entries are asked for. What was worked out from it holds while these are the same
 * objects, whatever else the shop gets, loses or changes; `show` puts a later shop in its place, so that whoever still
 * looks at it sees entries as they are now.
 */
export class DrawnOn implements Shop {
  readonly materials = new Asked(() => this.shop.materials);
  readonly bands = new Asked(() => this.shop.bands);
  readonly machines = new Asked(() => this.shop.machines);
  readonly connectors = new Asked(() => this.shop.connectors);
  readonly patterns = new Asked(() => this.shop.patterns);

  constructor(private shop: Shop) {}

  get jig(): Shop['jig'] {
    return this.shop.jig;
  }

  get pose(): Shop['pose'] {
    return this.shop.pose;
  }

  get limits(): Shop['limits'] {
    return this.shop.limits;
  }

  get tolerances(): Shop['tolerances'] {
    return this.shop.tolerances;
  }

  get changes(): Shop['changes'] {
    return this.shop.changes;
  }

  get glue(): Shop['glue'] {
    return this.shop.glue;
  }

  isOf(shop: Shop): boolean {
    return this.shop === shop;
  }

  /** True if another shop has the same for everything that was asked for; jig, pose, limits, tolerances, changes and glue always count. */
  holdsFor(other: Shop): boolean {
    const { shop } = this;
    return (
      shop.jig === other.jig &&
      shop.pose === other.pose &&
      shop.limits === other.limits &&
      shop.tolerances === other.tolerances &&
      shop.changes === other.changes &&
      shop.glue === other.glue &&
      this.materials.sameIn(other.materials) &&
      this.bands.sameIn(other.bands) &&
      this.machines.sameIn(other.machines) &&
      this.connectors.sameIn(other.connectors) &&
      this.patterns.sameIn(other.patterns)
    );
  }

  show(shop: Shop): void {
    this.shop = shop;
  }
}

/** Entries of one kind. Whoever goes through all of them depends on all of them. */
class Asked<T> implements ReadonlyMap<string, T> {
  private readonly names = new Set<string>();
  private every = false;

  constructor(private readonly now: () => ReadonlyMap<string, T>) {}

  sameIn(other: ReadonlyMap<string, T>): boolean {
    const own = this.now();
    if (own === other) return true;
    if (this.every && own.size !== other.size) return false;
    for (const name of this.every ? own.keys() : this.names) if (own.get(name) !== other.get(name)) return false;
    return true;
  }

  get(name: string): T | undefined {
    if (!this.every) this.names.add(name);
    return this.now().get(name);
  }

  has(name: string): boolean {
    return this.get(name) !== undefined;
  }

  get size(): number {
    return this.all().size;
  }

  forEach(callback: (value: T, key: string, map: ReadonlyMap<string, T>) => void): void {
    this.all().forEach(callback);
  }

  entries(): MapIterator<[string, T]> {
    return this.all().entries();
  }

  keys(): MapIterator<string> {
    return this.all().keys();
  }

  values(): MapIterator<T> {
    return this.all().values();
  }

  [Symbol.iterator](): MapIterator<[string, T]> {
    return this.all()[Symbol.iterator]();
  }

  private all(): ReadonlyMap<string, T> {
    this.every = true;
    return this.now();
  }
}
