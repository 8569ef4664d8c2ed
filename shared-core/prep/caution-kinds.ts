/** What can hurt somebody. */
export const CAUTION_KINDS = ['lead-paint', 'asbestos-coating', 'asbestos-filler', 'mould', 'mains', 'height', 'stairs', 'silica-dust', 'solvents', 'vapour-tight'] as const;

export type CautionKind = (typeof CAUTION_KINDS)[number];
