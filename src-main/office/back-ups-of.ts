import { join } from 'node:path';
import type { BackUps } from '../../shared-core/contract/index.ts';
import { backUpFolder, HouseStore, listBackUps } from '../store/index.ts';

export function pathOfBackUp(path: string, name: string): string {
  return join(backUpFolder(path), name);
}

/** The back-ups of a house file with what stands in each. */
export async function backUpsOf(path: string, trouble: string | null): Promise<BackUps> {
  const backUps = await Promise.all(
    listBackUps(path).map(async (backUp) => {
      const looked = await HouseStore.look(pathOfBackUp(path, backUp.name));
      const holds = looked.ok ? { house: looked.value.house.name, rooms: looked.value.house.rooms.length, last: looked.value.undo } : null;
      return { ...backUp, holds };
    }),
  );
  return { backUps, folder: backUpFolder(path), trouble };
}
