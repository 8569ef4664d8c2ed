import { houseOf, documentOf, type Loose } from '../builders.ts';
import type { House } from '../../shared-core/house/index.ts';
import { type HousePlan, planHouse } from '../../shared-core/plan/index.ts';

/** 20 1/2 in wide in rolls of 33 ft with a repeat of 21 in: strips of 8' 4" come every 8' 9", three to a roll. */
export const FERN: Loose = { id: 'fern', kind: 'wallcovering', name: 'Fern walk', patternNumber: 'K-2041', width: '20.5 in', rollLength: '33 ft', repeat: '21 in' };

/** A room of one wall, 8 ft high, that takes so many strips of fern. */
export function strips(id: string, count: number, facts: Loose = {}): Loose {
  return { id, name: id, walls: [{ id: 'A', length: `${count * 20.5} in`, height: '8 ft' }], bands: [{ id: 'main', covering: 'fern', walls: ['A'] }], ...facts };
}

/** A house of fern without spare rolls, and what is said otherwise. */
export function fernHouse(facts: Loose): House {
  return houseOf(documentOf({ rules: { spareRolls: 0 }, coverings: [FERN], ...facts }));
}

export function planOf(facts: Loose): HousePlan {
  return planHouse(fernHouse(facts));
}

export const rolls = (run: string, count: number): Loose => ({ covering: 'fern', run, rolls: count });

export const came = (run: string, count: number, facts: Loose = {}): Loose => ({ covering: 'fern', patternNumber: 'K-2041', run, rolls: count, ...facts });

/** An order placed of lines such as `[{ run: '2214', rolls: 10 }]`, of fern. */
export function placed(lines: readonly Loose[], facts: Loose = {}): Loose {
  return { id: 'first', placed: '2026-03-02', lines: lines.map((line) => ({ covering: 'fern', ...line })), ...facts };
}
