import { freeId } from '../../../shared-core/base/index.ts';
import { type DrawnPoint, subjectKey } from '../../../shared-core/drawing/index.ts';
import { type Edit, endsOf, type Opening, type Room, type Wall } from '../../../shared-core/house/index.ts';
import { dragEdges, type DraggedOpening, drawEdges, edgesOf, factsOfEdges, GRAINS, grainAt, type Grip, gripUnder, handlesOf, LEAST_DRAWN, type OpeningEdges, standsOnFloor, stepFrom, wholeGrip, type WallSpot } from '../../../shared-core/survey/index.ts';
import { lengthOf, type LengthStyle, showLength } from '../../../shared-core/units/index.ts';
import { say, sayList } from '../../../shared-core/words/index.ts';
import type { Drag, Dragging, PointedAt } from '../../drawing/dragging.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import { type Arrow, arrowPressed, pressed } from '../../parts/shortcuts.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { kindDrawn, type NewOpening, type OpeningKind } from './new-opening.ts';

const REACH_PIXELS = { hand: 6, finger: 16 };
const CURSORS: Readonly<Record<string, string>> = { left: 'ew-resize', right: 'ew-resize', head: 'ns-resize', sill: 'ns-resize', 'left-head': 'nwse-resize', 'right-sill': 'nwse-resize', 'right-head': 'nesw-resize', 'left-sill': 'nesw-resize' };

/** An opening that is being moved, sized or drawn. */
interface Held extends DraggedOpening {
  /** Null while it is drawn. */
  readonly before: Opening | null;
  readonly opening: Opening;
}

/** The sheet whose wall is looked at. */
interface Sheet {
  readonly room: Room | null;
  readonly wall: Wall | null;
  readonly newOpening: NewOpening;
  entranceOf(kind: OpeningKind): { readonly entrance?: true };
}

/** What the pointer or the arrow keys do to the openings of the wall that is looked at. */
export class OpeningHand implements Dragging {
  readonly #house: HouseState;
  readonly #sheet: Sheet;
  readonly isUpright = true;
  #looked = $state.raw<{ readonly room: string | undefined; readonly wall: string | undefined; readonly opening: string } | null>(null);
  #held = $state.raw<Held | null>(null);
  /** Whether the arrow keys have it. */
  isByKeys = $state(false);
  trouble = $state<string | null>(null);

  constructor(house: HouseState, sheet: Sheet) {
    this.#house = house;
    this.#sheet = sheet;
  }

  get #style(): LengthStyle {
    return this.#house.shown.lengths;
  }

  /** The opening that is looked at, where it is one of the wall that is. */
  get openingId(): string | null {
    const { room, wall } = this.#sheet;
    return this.#looked?.room === room?.id && this.#looked?.wall === wall?.id ? (this.#looked?.opening ?? null) : null;
  }

  #look(opening: string): void {
    this.#looked = { room: this.#sheet.room?.id, wall: this.#sheet.wall?.id, opening };
  }

  get guides() {
    return this.#held?.guides ?? [];
  }

  /** What is held where it can't stand. */
  get refused(): string | null {
    return this.trouble !== null && this.#held ? this.#held.opening.id : null;
  }

  /** A wall with what is held as it would stand. */
  shownOn(wall: Wall): Wall {
    const held = this.#held;
    if (!held || wall.id !== this.#sheet.wall?.id) return wall;
    return { ...wall, openings: held.before ? wall.openings.map((opening) => (opening.id === held.opening.id ? held.opening : opening)) : [...wall.openings, held.opening] };
  }

  handlesOn(wall: Wall) {
    const opening = wall.openings.find(({ id }) => id === this.openingId);
    return opening ? handlesOf(edgesOf(opening), standsOnFloor(opening)) : [];
  }

  /** What is held and what it is in line with; how to go on, for who holds it by the keys. */
  get says(): string | null {
    const held = this.#held;
    if (!held) return null;
    const { fine, stride } = GRAINS[this.#style];
    const lines = held.guides.map((guide) => guide.of);
    const caught = lines.length > 0 ? [say`In line with ${sayList(lines)}.`] : [];
    if (!this.isByKeys) return caught[0] ?? null;
    const how = say`Arrows move ${held.opening.id} by ${showLength(fine, this.#style)}, with Shift by ${showLength(stride, this.#style)}, with Alt they size it. Enter puts it down, Escape leaves it as it was.`;
    return [...caught, how].join(' ');
  }

  /** Looks at an opening; what the keys had is put down. */
  pick(opening: string): void {
    if (this.isByKeys) void this.putDown();
    this.trouble = null;
    this.#look(opening);
  }

  readonly cursorAt = (pointed: PointedAt): string | null => {
    const wall = this.#sheet.wall;
    const spot = wall && spotOn(wall, pointed.at);
    if (!wall || !spot) return null;
    const under = gripUnder(wall.openings, spot, reachOf(pointed));
    if (under) return CURSORS[under.grip.join('-')] ?? 'move';
    return isOnWall(wall, spot) ? 'crosshair' : null;
  };

  readonly follow = (drag: Drag | null, isDone: boolean): void => {
    // What the keys had is put down first.
    if (this.isByKeys) void this.putDown();
    const wall = this.#sheet.wall;
    if (!drag || !wall) this.giveUp();
    else {
      this.#hold(this.#dragged(wall, drag));
      if (isDone) void this.putDown();
    }
  };

  #dragged(wall: Wall, drag: Drag): Held | null {
    const [from, to] = [spotOn(wall, drag.from), spotOn(wall, drag.at)];
    const reach = reachOf(drag);
    const hand = { grain: grainAt(this.#style, drag.unitsPerPixel, drag.hasShift), reach: drag.hasControl ? 0 : reach, style: this.#style };
    const under = gripUnder(wall.openings, from, reach);
    if (under) return this.#moved(wall, under.opening, under.grip, { along: to.along - from.along, up: to.up - from.up }, hand);
    const drawn = drawEdges(from, to, wall, hand);
    const { left, right, sill, head } = drawn.edges;
    if (right - left < LEAST_DRAWN || head - sill < LEAST_DRAWN) return null;
    const kind = kindDrawn(this.#sheet.newOpening.kind, sill === 0);
    const id = freeId(kind, wall.openings.map((opening) => opening.id));
    return { ...drawn, before: null, opening: this.#withEdges({ id, kind, entrance: false } as Opening, null, drawn.edges) };
  }

  #moved(wall: Wall, opening: Opening, grip: Grip, by: WallSpot, hand: Parameters<typeof dragEdges>[5], from: OpeningEdges = edgesOf(opening)): Held {
    const others = wall.openings.filter(({ id }) => id !== opening.id);
    const dragged = dragEdges(from, grip, by, wall, others, hand);
    return { ...dragged, before: opening, opening: this.#withEdges(opening, edgesOf(opening), dragged.edges) };
  }

  #withEdges(opening: Opening, before: OpeningEdges | null, edges: OpeningEdges): Opening {
    const { left, right, sill, head } = edges;
    const lengths = { from: left, width: right - left, sill, height: head - sill };
    const changed = Object.entries(factsOfEdges(before, edges, this.#style)).map(([key, typed]) => [key, { typed, length: lengthOf(lengths[key as keyof typeof lengths]) }]);
    return { ...opening, ...Object.fromEntries(changed) };
  }

  /** Takes a key while the drawing has the keyboard; gives whether it did. */
  readonly onkey = (event: KeyboardEvent, pointed: string | null): boolean => {
    const wall = this.#sheet.wall;
    const key = pressed(event, 'opening');
    if (!wall || key === null) return false;
    if (!this.isByKeys) {
      const opening = key === 'take' && wall.openings.find(({ id }) => pointed === subjectKey({ kind: 'opening', id: `${wall.id} ${id}` }));
      if (!opening) return false;
      this.isByKeys = true;
      this.#hold({ before: opening, opening, edges: edgesOf(opening), guides: [] });
      return true;
    }
    if (key === 'take') void this.putDown();
    else if (key === 'giveUp') this.giveUp();
    else this.#step(wall, arrowPressed(event), event.shiftKey, key === 'size');
    return true;
  };

  #step(wall: Wall, key: Arrow, isFar: boolean, isSized: boolean): void {
    const held = this.#held;
    if (!held?.before) return;
    const { fine, stride } = GRAINS[this.#style];
    const step = isFar ? stride : fine;
    const isAlong = key === 'left' || key === 'right';
    const isForward = key === 'right' || key === 'up';
    const whole = wholeGrip(held.before).filter((edge) => isAlong === (edge === 'left' || edge === 'right'));
    const grip: Grip = isSized ? [isAlong ? 'right' : 'head'] : whole;
    const [first] = grip;
    if (!first) return;
    const by = stepFrom(held.edges[first], step, isForward);
    this.#hold(this.#moved(wall, held.before, grip, isAlong ? { along: by, up: 0 } : { along: 0, up: by }, { grain: fine, reach: 0, style: this.#style }, held.edges));
  }

  #hold(held: Held | null): void {
    this.#held = held;
    if (held) this.#look(held.opening.id);
    this.trouble = sayFaults(this.#house.preview(held && this.#edit(held)));
  }

  #edit({ before, opening, edges }: Held): Edit | null {
    const { room, wall } = this.#sheet;
    if (!room || !wall) return null;
    const facts = factsOfEdges(before && edgesOf(before), edges, this.#style);
    if (!before) return { kind: 'add-opening', room: room.id, wall: wall.id, opening: { id: opening.id, kind: opening.kind, ...this.#sheet.entranceOf(opening.kind), ...(facts as Required<typeof facts>) } };
    return Object.keys(facts).length > 0 ? { kind: 'change-opening', room: room.id, wall: wall.id, opening: opening.id, facts } : null;
  }

  /** Makes what is held the fact; what can't stand there goes back to where it was. */
  readonly putDown = async (): Promise<void> => {
    const held = this.#held;
    const edit = held && this.#edit(held);
    const { room, wall } = this.#sheet;
    this.#forget();
    if (!edit || !room || !wall) return;
    const faults = await this.#house.edit(edit);
    if (faults.length > 0) this.trouble = `${sayFaults(faults)} ${say`Nothing was changed.`}`;
  };

  giveUp(): void {
    this.#forget();
    this.#house.preview(null);
  }

  #forget(): void {
    this.#held = null;
    this.isByKeys = false;
    this.trouble = null;
  }
}

/** A point of the wall's drawing as a place on it: heights count from the floor line, which may slope. */
function spotOn(wall: Wall, { x, y }: DrawnPoint): WallSpot {
  const { left, right } = endsOf(wall.base);
  return { along: x, up: -y - (left + ((right - left) * x) / wall.length.length) };
}

function isOnWall(wall: Wall, { along, up }: WallSpot): boolean {
  const { left, right } = endsOf(wall.height);
  return along >= 0 && along <= wall.length.length && up >= 0 && up <= left + ((right - left) * along) / wall.length.length;
}

function reachOf({ unitsPerPixel, isTouch }: PointedAt): number {
  return unitsPerPixel * (isTouch ? REACH_PIXELS.finger : REACH_PIXELS.hand);
}
