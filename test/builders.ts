import type { Fault } from '../shared-core/base/index.ts';
import { applyEdit, decodeHouse, type Edit, type House, type HouseDocument, hungBand, type HungBand, type Room } from '../shared-core/house/index.ts';
import exchangeExample from './house/exchange-example.json' with { type: 'json' };

/** Plain JSON that a test may change as it likes. */
export type Loose = ReturnType<typeof JSON.parse>;

/** The exchange document's own example, a fresh copy each time. */
export function exampleDocument(): Loose {
  return structuredClone(exchangeExample);
}

export function exampleHouse(): House {
  return houseOf(exampleDocument());
}

/** A house from a document that is good; what is wrong with it otherwise. */
export function houseOf(document: Loose): House {
  const outcome = decodeHouse(document);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
  return outcome.value;
}

/** What is wrong with a document; nothing where it is good. */
export function faultsOf(document: unknown): readonly Fault[] {
  const outcome = decodeHouse(document);
  return outcome.ok ? [] : outcome.faults;
}

/** A house after an edit that is good; what is wrong with it otherwise. */
export function made(house: House, edit: Edit): House {
  const outcome = applyEdit(house, edit);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('\n'));
  return outcome.value;
}

/** The bands of a room, their edges as heights. */
export function bandsOf(room: Room | undefined): readonly HungBand[] {
  return room?.bands.map((band) => hungBand(room, band)) ?? [];
}

export function documentOf(parts: Partial<HouseDocument> | Loose): Loose {
  return { format: 'struckline-house', version: 1, name: 'Test', ...parts };
}

/** A wallcovering 20 in wide in rolls of 30 ft, matched straight at 20 in, and what is said otherwise. */
export function wallcovering(facts: Loose = {}): Loose {
  return { id: 'paper', kind: 'wallcovering', patternNumber: 'P-1', width: '20 in', rollLength: '30 ft', repeat: '20 in', ...facts };
}

/** A room of walls with inside corners, 8 ft high, hung all round with 'paper'. */
export function room(lengths: readonly string[], facts: Loose = {}, wallFacts: readonly Loose[] = []): Loose {
  const walls = lengths.map((length, index) => ({ id: String.fromCharCode(65 + index), length, height: '8 ft', ...wallFacts[index] }));
  return { id: 'room', name: 'Room', walls, bands: [{ id: 'main', covering: 'paper', walls: walls.map(({ id }) => id) }], ...facts };
}

export type { Edit };
