import type { House } from '../house/index.ts';

/** A room as it is called; what hangs in no room that is there is called by its id. */
export function nameRoom(house: Pick<House, 'rooms'>, id: string): string {
  return house.rooms.find((room) => room.id === id)?.name ?? id;
}
