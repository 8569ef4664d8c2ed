import { type Covering, type House, moneyIn, type Room } from '../house/index.ts';
import type { Outline } from '../survey/index.ts';
import { amountOver, bandsArea } from './areas.ts';
import { choosePacks } from './choose-packs.ts';
import { type MaterialId, MATERIALS, MATERIAL_IDS } from './material-table.ts';
import type { RoomToPrepare } from './met-surface.ts';
import type { MaterialNeed, MaterialUse, Task } from './prep-plan.ts';

/** Paste that a square metre takes, in millilitres made up (common practice, no source). */
const PASTE_PER_SQUARE_METRE: Readonly<Record<Exclude<Covering['kind'], 'paint'>, number>> = { wallcovering: 180, border: 200, lining: 200, mural: 200 };
/** Thick or ready-mixed adhesive takes more. */
const ADHESIVE_PER_SQUARE_METRE = 250;

/** Packs are told apart to a thousandth of their material's unit. */
const PARTS_OF_A_UNIT = 1000;

/**
 * What the house takes of each material, pooled over its rooms, and how it is bought at least cost.
 *
 * Shapes: what tasks use, without those that somebody else does, and the paste of all that hangs; in the order of the
 * table. A house that says nothing of a material's packs has null for them, one whose packs have no price null for that.
 * Source of all amounts: common practice, no source. Example: 3,200 g of filler in packs of 5 kg at 12.00 and 2 kg at
 * 6.00 are two small packs or one large at the same price; the two hold less too much.
 */
export function findMaterials(house: House, tasks: readonly Task[], rooms: readonly RoomToPrepare[]): readonly MaterialNeed[] {
  const othersDo = new Set(house.tasks.filter(({ isOthers }) => isOthers).map(({ task }) => task));
  const outlines = new Map(rooms.map(({ id, outline }) => [id, outline]));
  const used = [
    ...tasks.filter(({ id }) => !othersDo.has(id)).flatMap(({ room, materials }) => materials.map((use) => ({ room, ...use }))),
    ...house.rooms.flatMap((room) => pasteOf(house, room, outlines.get(room.id)).map((use) => ({ room: room.id, ...use }))),
  ];
  return MATERIAL_IDS.flatMap((material) => {
    const own = used.filter((use) => use.material === material && use.amount > 0);
    const amount = own.reduce((sum, use) => sum + use.amount, 0);
    return amount === 0 ? [] : [{ material, ...MATERIALS[material], amount, ...buy(house, material, amount), rooms: [...new Set(own.map(({ room }) => room))] }];
  });
}

/** The paste of what hangs in a room; what is pasted already takes none. */
function pasteOf(house: House, room: Room, outline: Pick<Outline, 'isClosed' | 'floorArea'> | undefined): readonly MaterialUse[] {
  const on = (id: string) => house.coverings.filter((covering) => covering.id === id);
  const overWalls = room.bands.flatMap((band) =>
    on(band.covering).flatMap((covering) => room.walls.filter(({ id }) => band.walls.includes(id)).map((wall) => ({ covering, area: bandsArea(room, wall, [band]) }))),
  );
  const overhead = room.ceiling && outline?.isClosed ? on(room.ceiling.covering).map((covering) => ({ covering, area: outline.floorArea })) : [];
  return [...overWalls, ...overhead].flatMap(({ covering, area }) => {
    const paste = pasteFor(covering);
    return paste ? [{ material: paste.material, amount: amountOver(area, paste.amount) }] : [];
  });
}

function pasteFor(covering: Covering): { readonly material: MaterialId; readonly amount: number } | null {
  if (covering.kind === 'paint') return null;
  const paste = 'paste' in covering ? (covering.paste ?? '') : '';
  if (/pre-?pasted|self-?adhesive/i.test(paste)) return null;
  return /adhesive/i.test(paste) ? { material: 'adhesive', amount: ADHESIVE_PER_SQUARE_METRE } : { material: 'paste', amount: PASTE_PER_SQUARE_METRE[covering.kind] };
}

function buy(house: House, material: MaterialId, amount: number): Pick<MaterialNeed, 'packs' | 'price'> {
  const packs = house.materials.find((own) => own.material === material)?.packs;
  if (!packs) return { packs: null, price: null };
  const bought = choosePacks(amount * PARTS_OF_A_UNIT, packs.map((pack) => ({ amount: Math.max(1, Math.floor(pack.amount * PARTS_OF_A_UNIT)), price: moneyIn(house, pack.price) })));
  return { packs: packs.flatMap((pack, index) => (bought.counts[index]! > 0 ? [{ amount: pack.amount, count: bought.counts[index]! }] : [])), price: bought.price };
}
