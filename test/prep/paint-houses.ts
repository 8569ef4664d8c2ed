import type { House } from '../../shared-core/house/index.ts';
import { planPaint } from '../../shared-core/prep/index.ts';
import { documentOf, houseOf, type Loose } from '../builders.ts';

export const RULES = ['none', 'nrm2', 'din-18363', 'is-1200-13'] as const;

export function paint(facts: Loose = {}): Loose {
  return { id: 'chalk', kind: 'paint', spreadingRate: '10 m2/L', coats: 1, ...facts };
}

/** Rooms with every wall in 'chalk' unless a room has bands of its own. */
export function paintedHouse(rooms: readonly Loose[], facts: Loose = {}, paints: readonly Loose[] = [paint()]): House {
  return houseOf(
    documentOf({
      lengths: 'metric',
      coverings: paints,
      rooms: rooms.map((room: Loose, index) => ({
        id: `room${index}`,
        name: `Room ${index}`,
        bands: room.walls ? [{ id: 'all', covering: 'chalk', walls: room.walls.map(({ id }: Loose) => id) }] : [],
        ...room,
      })),
      ...facts,
    }),
  );
}

const SQUARE_UNITS_PER_SQUARE_METRE = 320_000 ** 2;

/** In square metres; exact enough to be compared in four decimals. */
export function squareMetres(area: number): number {
  return Math.round((area / SQUARE_UNITS_PER_SQUARE_METRE) * 10_000) / 10_000;
}

/** What is painted of all surfaces of a paint, in square metres. */
export function paintedOf(house: House, covering = 'chalk'): number {
  const need = planPaint(house).find((one) => one.covering === covering);
  return squareMetres((need?.surfaces ?? []).reduce((sum, { area }) => sum + area, 0));
}

const wall = (id: string, length: string, height: Loose, openings: readonly Loose[] = []): Loose => ({ id, length, height, openings });
const opening = (id: string, kind: string, width: string, height: string, facts: Loose = {}): Loose => ({ id, kind, from: '0.5 m', width, height, ...facts });

/** 14 m round and 2.5 m high: 35 m², with a door of 1.6 m², a window of 0.49 m² and one of exactly 2.5 m². */
export const STUDY: Loose = {
  walls: [
    wall('A', '4 m', '2.5 m', [opening('door', 'door', '0.8 m', '2 m')]),
    wall('B', '3 m', '2.5 m', [opening('small', 'window', '0.7 m', '0.7 m', { sill: '1 m' })]),
    wall('C', '4 m', '2.5 m', [opening('large', 'window', '2 m', '1.25 m', { sill: '1 m' })]),
    wall('D', '3 m', '2.5 m'),
  ],
};

/** 14 m round and 2.4 m high: 33.6 m², with openings of exactly 0.5 and 3 m², and an archway of 3.2 m² whose covered sides are 1.68 m². */
export const HALL: Loose = {
  walls: [
    wall('A', '5 m', '2.4 m', [opening('arch', 'archway', '1.6 m', '2 m', { reveal: { depth: '0.3 m', sides: ['left', 'right', 'head'] } })]),
    wall('B', '2 m', '2.4 m', [opening('hatch', 'window', '1 m', '0.5 m', { sill: '1 m', reveal: { depth: '0.3 m', sides: ['left', 'right', 'head', 'sill'] } })]),
    wall('C', '5 m', '2.4 m', [opening('glass', 'window', '2 m', '1.5 m', { sill: '0.8 m', reveal: { depth: '0.1 m', sides: ['head'] } })]),
    wall('D', '2 m', '2.4 m'),
  ],
};

/**
 * A raked wall of 4 m, 2.4 m high at the left and 4.4 m at the right: a dado of 3.6 m² and a filling of 10 m², with a
 * window of which 0.5 m² lie in the dado and 1.5 m² in the filling.
 */
export const STAIR: Loose = {
  walls: [wall('A', '4 m', ['2.4 m', '4.4 m'], [opening('window', 'window', '1 m', '2 m', { sill: '0.4 m', reveal: { depth: '0.2 m', sides: ['left', 'right', 'head', 'sill'] } })])],
  bands: [
    { id: 'filling', covering: 'chalk', walls: ['A'], from: '0.9 m' },
    { id: 'dado', covering: 'slate', walls: ['A'], to: '0.9 m' },
  ],
};

export const SLATE = paint({ id: 'slate' });
