/** The places of a house's window, in the order of the work. */
export const PLACES = ['house', 'survey', 'prep', 'coverings', 'set-out', 'order', 'deliveries', 'calendar', 'paperwork'] as const;
export type Place = (typeof PLACES)[number];
