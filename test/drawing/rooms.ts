import { decodeHouse, type House, hungBand } from '../../shared-core/house/index.ts';
import { planHouse } from '../../shared-core/plan/index.ts';

interface WallTyped {
  readonly id: string;
  readonly length: string;
  readonly height?: string | readonly [string, string];
  readonly turn?: string;
  readonly openings?: readonly object[];
}

/** A house of one room with one wallcovering round it, begun at the left of its first wall unless the band says otherwise. */
export function setOutRoom(walls: readonly WallTyped[], band: object = {}, covering: object = {}) {
  const outcome = decodeHouse({
    format: 'struckline-house',
    version: 1,
    name: 'Test',
    coverings: [{ id: 'fern', kind: 'wallcovering', patternNumber: 'K-1', width: '20.5 in', rollLength: '33 ft', repeat: '21 in', ...covering }],
    rooms: [{ id: 'room', name: 'Room', walls: walls.map((wall) => ({ height: "8'", ...wall })), bands: [{ id: 'main', covering: 'fern', walls: walls.map(({ id }) => id), layout: { start: { wall: walls[0]!.id, at: '0 in' } }, ...band }] }],
  });
  if (!outcome.ok) throw new Error(outcome.faults.map(({ path, message }) => `${path} ${message}`).join('; '));
  const house: House = outcome.value;
  const plan = planHouse(house);
  const room = house.rooms[0]!;
  const bandPlan = plan.rooms[0]!.bands[0]!;
  const hung = house.coverings[0]!;
  if (bandPlan.kind !== 'strips' || hung.kind !== 'wallcovering') throw new Error('the band is one of strips');
  return { house, plan, room, outline: plan.rooms[0]!.outline, facts: { room, band: hungBand(room, room.bands[0]!), covering: hung, coveringName: 'K-1', stretch: bandPlan.stretches[0]! } };
}

/** The room of the worked example: 12' 4" by 10' 2", 8 ft high, a door on the first wall. */
export const WORKED: readonly WallTyped[] = [
  { id: 'A', length: `12' 4"`, openings: [{ id: 'door', kind: 'door', entrance: true, from: '2 ft', width: `2' 8"`, height: `6' 8"` }] },
  { id: 'B', length: `10' 2"` },
  { id: 'C', length: `12' 4"` },
  { id: 'D', length: `10' 2"` },
];
