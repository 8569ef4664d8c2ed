/** Where a figure comes from, and whether it was read there, is recalled, or is common practice without a source. */
export interface Source {
  readonly name: string;
  readonly how: 'read' | 'recomputed' | 'memory' | 'common practice';
}

/** A figure from outside and what the program makes of the same case. */
export interface Check {
  /** Stands in `known-differences.json` where the program means to differ. */
  readonly id: string;
  readonly source: Source;
  readonly expected: unknown;
  readonly ours: () => unknown;
}

export interface KnownDifference {
  readonly id: string;
  readonly expected: unknown;
  readonly ours: unknown;
  readonly cause: string;
}
