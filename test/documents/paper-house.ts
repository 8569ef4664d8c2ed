import { encodeHouse, type House } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';
import { demoHouse } from '../../src-main/office/index.ts';
import { PaperDesk, type PaperFile } from '../../src-main/office/paper-desk.ts';
import { houseOf, type Loose } from '../builders.ts';

/** When the houses of the tests were changed last. */
export const CHANGED = '2026-03-02T12:00:00.000Z';

/** The demo house in the midst of the work: every surface wants something, one order is placed and part of it came. */
export function houseAtWork(change: (house: Loose) => void = () => undefined): House {
  const house: Loose = structuredClone(encodeHouse(demoHouse()));
  house.work = { starts: '2026-03-09', people: 2, rate: '48.00', markup: '12.5', tax: '6.5', rounding: '5' };
  for (const room of house.rooms) for (const wall of room.walls) wall.surface ??= { kind: 'old-plaster', states: ['cracked'] };
  house.orders = [
    {
      id: '1',
      placed: '2026-03-02',
      expected: '2026-03-20',
      supplier: house.coverings.find(({ id }: Loose) => id === 'fern').supplier,
      deliverTo: 'The yard\nGate 2',
      deliverBy: '2026-03-21',
      lines: [{ covering: 'fern', patternNumber: 'K-2041', run: '2207', rolls: 6, packs: [{ rolls: 2, count: 3 }], price: '252.00', rooms: ['bed2'] }],
    },
  ];
  house.deliveries = [{ covering: 'fern', patternNumber: 'K-2041', run: '2207', rolls: 4, damaged: 1, received: '2026-03-06' }];
  house.leftovers = [{ covering: 'ivy', run: '88', length: "4' 3\"", count: 2, place: 'loft, blue box' }];
  change(house);
  return houseOf(house);
}

/** A house's papers as they are made of it. */
export function desk(house: House): PaperDesk {
  return new PaperDesk({ house, revision: 17, changed: CHANGED });
}

/** Papers of one house with the plan that they have to agree with. */
export function papersFor(house: House) {
  const own = desk(house);
  return {
    house,
    plan: planHouse(house),
    list: own.list(),
    make: async (kind: Parameters<PaperDesk['make']>[0]['kind'], of: string | null = null, form: Parameters<PaperDesk['make']>[1] = 'pdf', size: Parameters<PaperDesk['make']>[2] = 'letter'): Promise<PaperFile> => {
      const made = await own.make({ kind, of }, form, size);
      if (!made) throw new Error(`${kind} ${String(of)} as ${form} was not made`);
      return made;
    },
  };
}
