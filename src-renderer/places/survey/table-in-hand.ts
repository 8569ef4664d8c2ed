import type { ReadRow } from '../../../shared-core/survey/index.ts';

/** A table as text that stands in its panel until it is taken, and what was understood of it. */
export interface TableInHand {
  readonly text: string;
  isOpen: boolean;
  /** Each column and its heading, in the order in which they are shown. */
  readonly columns: readonly (readonly [column: string, name: string])[];
  readonly rows: readonly ReadRow<string>[];
  /** What is wrong with the table as a whole, in sentences. */
  readonly faults: readonly string[];
  /** Null while anything is wrong. */
  readonly edit: object | null;
  /** What would be taken, in words. */
  readonly summary: string;
  /** What the house's facts have against it; nothing was taken then. */
  readonly refused: string | null;
  type(text: string): void;
  /** Takes all of it as one edit; false where nothing was taken. */
  take(): boolean;
}
