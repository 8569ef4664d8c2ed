import { type DrawingOnPaper, drawBorder, drawCeiling, drawElevation, drawRoomPlan, type PaperBox, scaleOnPaper, type StretchPart, stretchOnPaper } from '../../shared-core/drawing/index.ts';
import { type House, hungBand, nameCovering, type Room } from '../../shared-core/house/index.ts';
import { type BandPlan, bandsBeside, bordersDrawn, CEILING, hangingDrawn, type HousePlan, nameRoom, type RoomPlan, rollsOfBand } from '../../shared-core/plan/index.ts';
import { say } from '../../shared-core/words/index.ts';

/** What the title over a drawing takes of the page, in points. */
export const OVER_DRAWING = 30;

/** A drawing of a room for paper, with what stands over it. */
export interface RoomDrawing extends DrawingOnPaper {
  readonly title: string;
}

type Stretch = BandPlan['stretches'][number];

/** What all drawings of a room are made from. */
interface Site {
  readonly house: House;
  readonly plan: HousePlan;
  readonly room: Room;
  readonly planned: RoomPlan;
  readonly area: PaperBox;
  readonly textHeight: number;
}

/**
 * A room's drawings to scale for its job sheet: its plan, every band unrolled in rows of a few walls, the ceiling.
 *
 * Shapes: the area that a page's text may fill and the height of text, in points. The plan and the ceiling take half a
 * page at most, the rows of what hangs in lengths and of lining three quarters, other strips a whole one, unless more is
 * needed for every strip to have its ring. A room without walls has none.
 */
export function drawingsOfRoom(house: House, plan: HousePlan, id: string, area: PaperBox, textHeight: number): readonly RoomDrawing[] {
  const room = house.rooms.find((one) => one.id === id);
  const planned = plan.rooms.find((one) => one.id === id);
  if (!room || !planned || room.walls.length === 0) return [];
  const site: Site = { house, plan, room: { ...room, name: nameRoom(house, id) }, planned, area, textHeight };
  return [planOfRoom(site), ...planned.bands.flatMap((band) => bandInRows(site, band)), ...ceilingOf(site)];
}

function halfPage({ area }: Site): PaperBox {
  return { width: area.width, height: area.height / 2 - OVER_DRAWING };
}

/** With the line struck and the kill point of what hangs: one stretch for each wall, what is seen before lining. */
function planOfRoom(site: Site): RoomDrawing {
  const { house, room, planned, textHeight } = site;
  const isLining = ({ covering }: BandPlan) => house.coverings.some(({ id, kind }) => id === covering && kind === 'lining');
  const order = (band: BandPlan) => (isLining(band) ? 2 : band.kind === 'strips' ? 0 : 1);
  const taken = new Set<string>();
  const shown = planned.bands
    .toSorted((one, other) => order(one) - order(other))
    .flatMap(({ stretches }): readonly Stretch[] => stretches)
    .filter(({ axis }) => {
      const walls = axis.walls.map(({ wall }) => wall.id);
      const isFree = walls.every((wall) => !taken.has(wall));
      if (isFree) for (const wall of walls) taken.add(wall);
      return isFree;
    });
  const drawing = drawRoomPlan(room, planned.outline, house.lengths, { hangings: shown.map(hangingDrawn) });
  return { title: say`Plan`, drawing, ...scaleOnPaper(drawing, house.lengths, halfPage(site), textHeight) };
}

function bandInRows(site: Site, planned: BandPlan): readonly RoomDrawing[] {
  const { house, area, textHeight } = site;
  const coveringName = nameCovering(house, planned.covering);
  const isShort = planned.kind === 'lengths' || house.coverings.some(({ id, kind }) => id === planned.covering && kind === 'lining');
  const page = { box: area, most: isShort ? area.height * 0.75 : area.height, textHeight, over: OVER_DRAWING };
  return drawersOf(site, planned).flatMap(({ stretch, draw }) => stretchOnPaper(draw, stretch, house.lengths, page).map(({ where, ...drawn }) => ({ ...drawn, title: `${coveringName}, ${where}` })));
}

/** How a part of each stretch of a band is drawn. */
function drawersOf({ house, plan, room, planned }: Site, own: BandPlan): readonly { readonly stretch: Stretch; readonly draw: (part: StretchPart) => DrawingOnPaper['drawing'] }[] {
  const facts = room.bands.find(({ id }) => id === own.id);
  const covering = house.coverings.find(({ id }) => id === own.covering);
  if (!facts || !covering || covering.kind === 'paint') return [];
  const band = hungBand(room, facts);
  const style = house.lengths;
  const named = { room, band, coveringName: nameCovering(house, covering.id) };
  const others = covering.kind === 'lining' ? [] : bandsBeside(house, room, planned, own.id);
  if (own.kind === 'strips') {
    if (covering.kind === 'border') return [];
    const borders = covering.kind === 'lining' ? [] : bordersDrawn(house, room, planned);
    const rolls = rollsOfBand(plan, room.id, own.id);
    return own.stretches.map((stretch) => ({ stretch, draw: (part) => drawElevation({ ...named, covering, stretch, borders, others, rolls }, style, { part }) }));
  }
  if (covering.kind !== 'border' && covering.kind !== 'lining') return [];
  return own.stretches.map((stretch) => ({ stretch, draw: (part) => drawBorder({ ...named, covering, stretch, others }, style, { part }) }));
}

function ceilingOf(site: Site): readonly RoomDrawing[] {
  const { house, plan, room, planned, textHeight } = site;
  const { ceiling, outline } = planned;
  if (!ceiling) return [];
  const coveringName = nameCovering(house, ceiling.covering);
  const drawing = drawCeiling({ room, outline, layout: ceiling, coveringName, rolls: rollsOfBand(plan, room.id, CEILING) }, house.lengths);
  return [{ title: say`${coveringName}, ceiling from above`, drawing, ...scaleOnPaper(drawing, house.lengths, halfPage(site), textHeight) }];
}
