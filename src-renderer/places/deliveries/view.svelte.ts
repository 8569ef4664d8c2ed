import type { RowOrder } from './against-order.ts';
import type { PackageColumn } from './package-order.ts';

/** The column that a table is sorted by. */
export class Sorting<Column extends string> {
  column: Column = $state() as Column;
  isBackwards = $state(false);

  constructor(column: Column) {
    this.column = column;
  }

  /** Sorts by a column; by the same once more, the other way round. */
  by(column: Column): void {
    this.isBackwards = this.column === column && !this.isBackwards;
    this.column = column;
  }
}

/** How the tables are looked at; it outlives the place and the house, as long as the app is open. */
export const view = { againstOrder: new Sorting<RowOrder>('pattern'), packages: new Sorting<PackageColumn>('number') };
