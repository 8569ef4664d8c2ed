/** Facts are rows of JSON text in the exchange document's spelling; SQLite keeps them whole, the schema reads them. */
export interface Tables {
  house: HouseRow;
  covering: FactRow;
  room: FactRow;
  supplier: FactRow;
  stock: FactRow;
  offer: FactRow;
  placed_order: FactRow;
  delivery: FactRow;
  sent_back: FactRow;
  leftover: FactRow;
  matching: FactRow;
  run_choice: FactRow;
  picture: FactRow;
  photo: FactRow;
  task_choice: FactRow;
  own_material: FactRow;
  expense: FactRow;
  photo_image: PhotoImageRow;
  edit: EditRow;
}

export interface HouseRow {
  id: 1;
  facts: string;
  /** Counts up with every change on disk, undo and redo included. */
  revision: number;
  /** When it was changed last, as an ISO date and time in UTC; null where that was before files kept it. */
  changed: string | null;
}

export interface FactRow {
  id: string;
  position: number;
  facts: string;
}

/** What a photo shows, kept once under a name made of what is in it; the photo's facts and the edits hold that name alone. */
export interface PhotoImageRow {
  id: string;
  image: string;
}

/** One edit as it can be undone: the rows it changed, as they were and as they became. */
export interface EditRow {
  number: number;
  name: string;
  changes: string;
  is_undone: 0 | 1;
}

export const FACT_TABLES = ['covering', 'room', 'supplier', 'stock', 'offer', 'placed_order', 'delivery', 'sent_back', 'leftover', 'matching', 'run_choice', 'picture', 'photo', 'task_choice', 'own_material', 'expense'] as const;
export type FactTable = (typeof FACT_TABLES)[number];
