import { compare } from '../../parts/found.ts';

export type OrderView = 'pattern' | 'room' | 'supplier';
export type OrderSort = 'house' | 'pattern' | 'buy' | 'price' | 'open';

/** How the order is looked at; kept while the window is open. */
class LookingAt {
  view = $state<OrderView>('pattern');
  words = $state('');
  sorted = $state<OrderSort>('house');

  /** In the order chosen; what is equal stays as the house has it. */
  sort<Item>(items: readonly Item[], by: Readonly<Record<Exclude<OrderSort, 'house'>, (item: Item) => string | number>>): readonly Item[] {
    if (this.sorted === 'house') return items;
    const key = by[this.sorted];
    return items.toSorted((one, other) => compare(key(one), key(other)));
  }
}

export const lookingAt = new LookingAt();
