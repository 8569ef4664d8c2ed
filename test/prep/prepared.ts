import type { Caution, Task } from '../../shared-core/prep/index.ts';
import { planPrep } from '../../shared-core/prep/index.ts';
import type { House } from '../../shared-core/house/index.ts';
import { drawOutline } from '../../shared-core/survey/index.ts';
import { documentOf, houseOf, type Loose, wallcovering } from '../builders.ts';

/** A house made ready, its rooms drawn by the survey. */
export function prepared(house: House) {
  return planPrep(house, house.rooms.map((room) => ({ id: room.id, outline: drawOutline(room) })));
}

const COVERINGS = [
  wallcovering(),
  wallcovering({ id: 'vinyl', patternNumber: 'V-1', material: 'solid vinyl' }),
  wallcovering({ id: 'foil', patternNumber: 'F-1', material: 'metallic foil' }),
  { id: 'border', kind: 'border', width: '10 cm', rollLength: '5 m' },
  { id: 'lining', kind: 'lining', width: '56 cm', rollLength: '10 m' },
  { id: 'paint', kind: 'paint' },
];

/** A house of one room whose one wall is 4 m long and 2.5 m high, 10 m², with this surface, and with this covering over all of it. */
export function oneWall(surface: Loose | undefined, covering: string | null, { house = {}, room = {}, wall = {} }: { house?: Loose; room?: Loose; wall?: Loose } = {}): House {
  const bands = covering === null ? [] : [{ id: 'band', covering, walls: ['A'], ...(covering === 'border' ? { from: '2 m', to: '2.1 m' } : {}) }];
  const walls = [{ id: 'A', length: '4 m', height: '2.5 m', surface, ...wall }];
  return houseOf(documentOf({ built: 2010, country: 'US', lengths: 'metric', coverings: COVERINGS, rooms: [{ id: 'room', name: 'Room', walls, bands, ...room }], ...house }));
}

export function taskOf(tasks: readonly Task[], rule: string): Task {
  const found = tasks.find((task) => task.rule === rule);
  if (!found) throw new Error(`no task by ${rule}: ${tasks.map((task) => task.rule).join(', ')}`);
  return found;
}

export function cautionOf(cautions: readonly Caution[], kind: string): Caution | undefined {
  return cautions.find((caution) => caution.kind === kind);
}
