import { type Border, type House, hungBand, type HungBand, nameCovering, type Room } from '../house/index.ts';
import { type BorderLayout, seamsOf } from '../setting-out/index.ts';
import type { PlannedStretch, RoomPlan } from './house-plan.ts';

/** The borders of a room as they are drawn over what else hangs there. */
export function bordersDrawn(house: House, room: Room, plan: RoomPlan): readonly { readonly band: HungBand; readonly covering: Border; readonly layout: BorderLayout; readonly coveringName: string }[] {
  return plan.bands.flatMap((planned) => {
    const band = room.bands.find(({ id }) => id === planned.id);
    const covering = house.coverings.find(({ id }) => id === planned.covering);
    return planned.kind === 'lengths' && band && covering?.kind === 'border' ? planned.stretches.map((layout) => ({ band: hungBand(room, band), covering, layout, coveringName: nameCovering(house, covering.id) })) : [];
  });
}

/** The bands of strips beside one of a room's; lining lies under what hangs and is not seen. */
export function bandsBeside(house: House, room: Room, plan: RoomPlan, drawn: string | null): readonly { readonly band: HungBand; readonly coveringName: string }[] {
  return plan.bands.flatMap((planned) => {
    const band = room.bands.find(({ id }) => id === planned.id);
    const covering = house.coverings.find(({ id }) => id === planned.covering);
    return band && planned.kind === 'strips' && planned.id !== drawn && covering?.kind !== 'lining' ? [{ band: hungBand(room, band), coveringName: nameCovering(house, planned.covering) }] : [];
  });
}

/** What a plan shows of a stretch: where it is begun, which way it goes, where its strips and its ends meet. */
export function hangingDrawn(stretch: PlannedStretch | BorderLayout) {
  return { start: stretch.start, kill: stretch.kill, direction: stretch.grid.direction, mismatch: stretch.mismatch, seams: 'strips' in stretch ? seamsOf(stretch) : [] };
}
