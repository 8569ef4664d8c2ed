import { say } from '../../../shared-core/words/index.ts';
import type { Subject } from '../../../shared-core/drawing/index.ts';
import { type Band, type Border, type Covering, type Edit, hungBand, type HungBand, type Layout, type Lining, type Mural, nameCovering, type Room, type Wallcovering } from '../../../shared-core/house/index.ts';
import { type BandPlan, bandsBeside, bordersDrawn, CEILING, type CeilingPlan, type PieceRoll, piecesOf, type PlannedStretch, type RoomPlan, rollsOfBand } from '../../../shared-core/plan/index.ts';
import { asCut, cutPieces, isRollGoods } from '../../../shared-core/ordering/index.ts';
import { type ChosenLayout, type LayoutOption, onWall, setOutStrips } from '../../../shared-core/setting-out/index.ts';
import { type Length, type LengthStyle, type Measure, parseMeasure, printLength, showLength } from '../../../shared-core/units/index.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import type { HouseState } from '../../state/house.svelte.ts';

/** How long the pointer rests before the whole house is planned anew. */
const REST_MILLISECONDS = 120;

type Json = string | number | boolean | null | { readonly [key: string]: Json };
type BandFacts = Readonly<Record<string, Json>>;

/** A length as it was typed; one that nobody typed, in the house's own unit. */
export function typedOf(measure: Measure, style: LengthStyle): string {
  return measure.length === 0 ? printLength(measure.length, style) : measure.typed;
}

/** How many there are of what a band hangs in. */
export function sayCount(count: number, kind: BandPlan['kind'] | 'panels'): string {
  if (kind === 'panels') return count === 1 ? say`${count} panel` : say`${count} panels`;
  if (kind === 'strips') return count === 1 ? say`${count} strip` : say`${count} strips`;
  return count === 1 ? say`${count} length` : say`${count} lengths`;
}

export interface LayoutTyped {
  readonly wall: string;
  readonly at: string;
  readonly edge: 'left' | 'centre' | 'right';
  readonly direction: Layout['direction'];
  /** 'start', or the wall on which the ends meet. */
  readonly killWall: string;
  readonly killAt: string;
}

/** The band and stretch that is looked at, and the user's choice of start and kill point. */
export class SetOutSheet {
  readonly #house: HouseState;
  /** The band that is looked at, or the ceiling. */
  bandId = $state<string | null>(null);
  stretchIndex = $state(0);
  picked = $state.raw<Subject | null>(null);
  trouble = $state<string | null>(null);
  #pause: ReturnType<typeof setTimeout> | undefined;
  /** The layout under the pointer while the start line is dragged. */
  #dragged = $state.raw<ChosenLayout | null>(null);

  constructor(house: HouseState) {
    this.#house = house;
  }

  look(bandId: string | null): void {
    this.bandId = bandId;
    this.stretchIndex = 0;
    this.picked = null;
    this.#dragged = null;
  }

  get room(): Room | null {
    return this.#house.planner.planned?.rooms.find(({ id }) => id === this.#house.room?.id) ?? null;
  }

  get roomPlan(): RoomPlan | null {
    return this.#house.plan?.rooms.find(({ id }) => id === this.room?.id) ?? null;
  }

  get bandPlan(): BandPlan | null {
    const bands = this.roomPlan?.bands ?? [];
    if (this.bandId === CEILING && this.roomPlan?.ceiling) return null;
    return bands.find(({ id }) => id === this.bandId) ?? bands[0] ?? null;
  }

  /** The ceiling, where it is what is looked at. */
  get ceiling(): CeilingPlan | null {
    return this.bandPlan === null ? (this.roomPlan?.ceiling ?? null) : null;
  }

  isMural({ covering }: BandPlan): boolean {
    return this.#coverings.find(({ id }) => id === covering)?.kind === 'mural';
  }

  get ceilingCovering(): Wallcovering | Lining | null {
    const covering = this.#coverings.find(({ id }) => id === this.roomPlan?.ceiling?.covering);
    return covering?.kind === 'wallcovering' || covering?.kind === 'lining' ? covering : null;
  }

  /** Where the pieces of what is looked at are cut from. */
  get rolls(): ReadonlyMap<string, PieceRoll> {
    const { plan } = this.#house;
    const { room, bandPlan } = this;
    return plan && room ? rollsOfBand(plan, room.id, bandPlan?.id ?? CEILING) : new Map();
  }

  get band(): HungBand | null {
    const band = this.room?.bands.find(({ id }) => id === this.bandPlan?.id);
    return this.room && band ? hungBand(this.room, band) : null;
  }

  get covering(): Wallcovering | Border | Lining | Mural | null {
    const covering = this.#coverings.find(({ id }) => id === this.band?.covering);
    return covering && covering.kind !== 'paint' ? covering : null;
  }

  get coveringName(): string {
    return this.#name(this.covering?.id ?? '');
  }

  /** Borders of the room that are drawn over the band. */
  get borders() {
    const { room, roomPlan } = this;
    const house = this.#house.planner.planned;
    return house && room && roomPlan ? bordersDrawn(house, room, roomPlan) : [];
  }

  /** Bands of strips beside the one that is looked at. */
  get others() {
    const { room, roomPlan, bandPlan } = this;
    const house = this.#house.planner.planned;
    return house && room && roomPlan ? bandsBeside(house, room, roomPlan, bandPlan?.id ?? null) : [];
  }

  get stretch() {
    const stretches = this.bandPlan?.stretches ?? [];
    return stretches[this.stretchIndex] ?? stretches[0] ?? null;
  }

  /** The same as it would hang from where the line is dragged to, set out at once. */
  readonly draggedStretch: PlannedStretch | null = $derived.by(() => {
    const layout = this.#dragged;
    const { stretch } = this;
    const set = layout && this.#setOut(layout);
    return set && stretch && 'options' in stretch ? { ...stretch, ...set } : null;
  });

  /** The band with that stretch in it, its rolls counted quickly. */
  readonly draggedBand: BandPlan | null = $derived.by(() => {
    const { bandPlan, covering, draggedStretch, stretch } = this;
    const cut = covering && asCut(covering);
    if (bandPlan?.kind !== 'strips' || !draggedStretch || !cut || !isRollGoods(cut)) return null;
    const band = { ...bandPlan, stretches: bandPlan.stretches.map((one) => (one === stretch ? draggedStretch : one)) };
    const pieces = piecesOf(band).map((piece) => ({ room: '', band: band.id, piece }));
    return { ...band, rollsAlone: cutPieces(cut, pieces, 'instant').plan.rollCount };
  });

  /** The layout as it stands: the user's choice, or what the plan took for want of one. */
  get layout(): LayoutTyped | null {
    const { stretch } = this;
    const band = this.#savedBand;
    if (!band || !stretch) return null;
    if (band.layout && stretch.axis.walls.some(({ wall }) => wall.id === band.layout?.start.wall)) {
      const { start, direction, kill } = band.layout;
      const style = this.#house.shown.lengths;
      return { wall: start.wall, at: typedOf(start.at, style), edge: start.edge ?? 'left', direction, killWall: kill === 'start' ? 'start' : kill.wall, killAt: kill === 'start' ? '' : typedOf(kill.at, style) };
    }
    const [best] = this.options;
    return best ? this.#typed(best.layout) : this.#typed({ start: stretch.start, edge: 'left', direction: 'right', kill: 'start' });
  }

  /** Other layouts of the stretch that are worth a look, the best first. */
  get options(): readonly LayoutOption[] {
    const { stretch } = this;
    return stretch && 'options' in stretch ? stretch.options : [];
  }

  /** An option as it would hang. */
  setOutOption({ layout }: LayoutOption) {
    return this.#setOut(layout);
  }

  #setOut(layout: ChosenLayout) {
    const { band, covering, stretch } = this;
    const rules = this.#house.planner.planned?.rules;
    if (!band || covering?.kind !== 'wallcovering' || !stretch || !rules) return null;
    const walls = stretch.axis.walls.map(({ wall }) => wall);
    return setOutStrips({ walls, isClosed: stretch.axis.isClosed }, band, covering, rules, layout);
  }

  take = (option: LayoutOption): Promise<string | null> => this.change(this.#typed(option.layout));

  /** Shows, or at its end makes, a start at a place of the drawing, which is one of the stretch's axis. */
  async dragStart(x: number | null, isDone: boolean): Promise<void> {
    const { stretch } = this;
    if (!stretch || x === null) {
      clearTimeout(this.#pause);
      this.#dragged = null;
      this.preview(null);
      return;
    }
    const { wall, at } = onWall(stretch.axis, Math.round(x));
    const change = { wall, at: showLength(at, this.#house.shown.lengths), edge: 'left' as const };
    this.#dragged = this.#asChosen(change);
    clearTimeout(this.#pause);
    if (!isDone) {
      // The house's order follows where the pointer rests; what hangs on these walls follows the pointer itself.
      this.#pause = setTimeout(() => this.preview(change), REST_MILLISECONDS);
      return;
    }
    this.trouble = await this.change(change);
    this.#dragged = null;
  }

  #asChosen(change: Pick<LayoutTyped, 'wall' | 'at' | 'edge'>): ChosenLayout | null {
    const { layout, stretch } = this;
    const at = parseMeasure(change.at, this.#house.shown.lengths);
    const killAt = parseMeasure(layout?.killAt || '0 in', this.#house.shown.lengths);
    if (!layout || !stretch || !at.ok || !killAt.ok) return null;
    const kill = layout.killWall === 'start' ? 'start' : { wall: layout.killWall, at: killAt.value.length };
    return { start: { wall: change.wall, at: at.value.length }, edge: change.edge, direction: layout.direction, kill };
  }

  #typed({ start, edge, direction, kill }: ChosenLayout): LayoutTyped {
    const print = (length: Length) => printLength(length, this.#house.shown.lengths);
    return { wall: start.wall, at: print(start.at), edge: edge ?? 'left', direction, killWall: kill === 'start' ? 'start' : kill.wall, killAt: kill === 'start' ? '' : print(kill.at) };
  }

  /** Why there is no line to choose, where there is none. */
  get fixed(): { readonly title: string; readonly words: string } | null {
    const { covering } = this;
    if (covering?.kind === 'wallcovering' && covering.panels === 'equal') {
      return { title: say`Equal panels`, words: say`Every wall is divided in equal strips no wider than the roll; both edges of each are trimmed. Seams and steps of shade will show.` };
    }
    if (covering?.kind === 'lining' && covering.direction === 'across') {
      return { title: say`Hung across`, words: say`In courses from the top down, each from inside corner to inside corner; the last is as high as what is left.` };
    }
    return null;
  }

  /** A line can be dragged where strips hang from one. */
  get canDrag(): boolean {
    return this.fixed === null && this.covering?.kind !== 'mural';
  }

  /** What decided where the line is struck, for want of a choice. */
  get reason(): string {
    const { covering } = this;
    if (covering?.kind === 'lining') return say`Its seams are kept off those of what hangs over it, until you choose or drag the line.`;
    if (covering?.kind === 'wallcovering') return say`The best that the search found, until you choose or drag the line.`;
    const isAtFrame = this.stretch?.axis.isClosed && this.stretch.kill === null;
    return isAtFrame ? say`From the side of the door, where its ends never meet, until you choose.` : say`From the first inside corner, until you choose.`;
  }

  get isChosen(): boolean {
    return this.#savedBand?.layout !== undefined;
  }

  /** As saved, for the fields: what is being typed only shows in the drawing. */
  get #savedBand(): Band | null {
    return this.#house.room?.bands.find(({ id }) => id === this.bandPlan?.id) ?? null;
  }

  /** Facts of the band as they are saved, for the fields. */
  get savedBand(): Band | null {
    return this.#savedBand;
  }

  changeBand = async (facts: BandFacts): Promise<string | null> => {
    const edit = this.#bandEdit(facts);
    return edit && sayFaults(await this.#house.edit(edit));
  };

  previewBand(facts: BandFacts | null): void {
    this.#house.preview(facts && this.#bandEdit(facts));
  }

  changeCeiling = async (facts: { readonly along?: string; readonly position?: string }): Promise<string | null> => {
    const ceiling = this.#house.room?.ceiling;
    if (!ceiling) return null;
    const { along, position } = { along: ceiling.along, position: ceiling.position.typed, ...facts };
    const edit: Edit = { kind: 'change-room', room: this.#house.room.id, facts: { ceiling: { covering: ceiling.covering, position, ...(along ? { along } : {}) } } };
    return sayFaults(await this.#house.edit(edit));
  };

  /** Places a mural from the left end of its first wall, or centres it again. */
  placeMural = (isPlaced: boolean): Promise<string | null> => {
    const wall = this.stretch?.axis.walls[0]?.wall.id;
    return this.changeBand(isPlaced && wall ? { layout: { start: { wall, at: '0 in' } } } : { layout: null, firstPanel: null });
  };

  #bandEdit(facts: BandFacts): Edit | null {
    const { room, band } = this;
    return room && band ? { kind: 'change-band', room: room.id, band: band.id, facts: { ...facts } } : null;
  }

  change = async (change: Partial<LayoutTyped>): Promise<string | null> => {
    const edit = this.#edit(change);
    return edit && sayFaults(await this.#house.edit(edit));
  };

  preview(change: Partial<LayoutTyped> | null): void {
    this.#house.preview(change && this.#edit(change));
  }

  async forget(): Promise<void> {
    const { room, band } = this;
    if (room && band) this.trouble = sayFaults(await this.#house.edit({ kind: 'change-band', room: room.id, band: band.id, facts: { layout: null } }));
  }

  /** Hanging both ways, the ends meet across the room unless the user said where. */
  changeDirection = (direction: LayoutTyped['direction']) => {
    const walls = this.stretch?.axis.walls.map(({ wall }) => wall.id) ?? [];
    const { layout } = this;
    const across = walls[(walls.indexOf(layout?.wall ?? '') + Math.ceil(walls.length / 2)) % walls.length];
    const needsKill = direction === 'both' && layout?.killWall === 'start' && this.stretch?.axis.isClosed && across !== undefined;
    return this.change({ direction, ...(needsKill ? { killWall: across, killAt: '0 in' } : {}) });
  };

  #edit(change: Partial<LayoutTyped>): Edit | null {
    const { room, band, layout } = this;
    if (!room || !band || !layout) return null;
    const { wall, at, edge, direction, killWall, killAt } = { ...layout, ...change };
    const kill = killWall === 'start' ? 'start' : { wall: killWall, at: killAt || '0 in' };
    return { kind: 'change-band', room: room.id, band: band.id, facts: { layout: { start: { wall, at, edge }, direction, kill } } };
  }

  #name(covering: string): string {
    const house = this.#house.planner.planned;
    return house ? nameCovering(house, covering) : '';
  }

  get #coverings(): readonly Covering[] {
    return this.#house.planner.planned?.coverings ?? [];
  }
}
