import type { Subject } from '../../../shared-core/drawing/index.ts';
import type { Band, Border, Covering, Edit, Layout, Room, Wallcovering } from '../../../shared-core/house/index.ts';
import { type BandPlan, nameCovering, type RoomPlan } from '../../../shared-core/plan/index.ts';
import { printLength } from '../../../shared-core/units/index.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import type { HouseState } from '../../state/house.svelte.ts';

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
  bandId = $state<string | null>(null);
  stretchIndex = $state(0);
  picked = $state.raw<Subject | null>(null);
  trouble = $state<string | null>(null);

  constructor(house: HouseState) {
    this.#house = house;
  }

  get room(): Room | null {
    return this.#house.planner.planned?.rooms.find(({ id }) => id === this.#house.room?.id) ?? null;
  }

  get roomPlan(): RoomPlan | null {
    return this.#house.plan?.rooms.find(({ id }) => id === this.room?.id) ?? null;
  }

  get bandPlan(): BandPlan | null {
    const bands = this.roomPlan?.bands ?? [];
    return bands.find(({ id }) => id === this.bandId) ?? bands[0] ?? null;
  }

  get band(): Band | null {
    return this.room?.bands.find(({ id }) => id === this.bandPlan?.id) ?? null;
  }

  get covering(): Wallcovering | Border | null {
    const covering = this.#coverings.find(({ id }) => id === this.band?.covering);
    return covering && (covering.kind === 'wallcovering' || covering.kind === 'border') ? covering : null;
  }

  get coveringName(): string {
    return this.#name(this.covering?.id ?? '');
  }

  /** Borders of the room that are drawn over the band. */
  get borders() {
    const { room, roomPlan } = this;
    return (roomPlan?.bands ?? []).flatMap((plan) => {
      const band = room?.bands.find(({ id }) => id === plan.id);
      const covering = this.#coverings.find(({ id }) => id === plan.covering);
      return plan.kind === 'lengths' && band && covering?.kind === 'border' ? plan.stretches.map((layout) => ({ band, covering, layout, coveringName: this.#name(covering.id) })) : [];
    });
  }

  get stretch() {
    const stretches = this.bandPlan?.stretches ?? [];
    return stretches[this.stretchIndex] ?? stretches[0] ?? null;
  }

  /** The layout as it stands: the user's choice, or what the plan took for want of one. */
  get layout(): LayoutTyped | null {
    const { stretch } = this;
    const band = this.#savedBand;
    if (!band || !stretch) return null;
    const style = this.#house.shown.lengths;
    const chosen = band.layout && stretch.axis.walls.some(({ wall }) => wall.id === band.layout?.start.wall) ? band.layout : null;
    const kill = chosen?.kill ?? 'start';
    return {
      wall: chosen?.start.wall ?? stretch.start.wall,
      at: chosen?.start.at.typed ?? printLength(stretch.start.at, style),
      edge: chosen?.start.edge ?? 'left',
      direction: chosen?.direction ?? 'right',
      killWall: kill === 'start' ? 'start' : kill.wall,
      killAt: kill === 'start' ? '' : kill.at.typed,
    };
  }

  get isChosen(): boolean {
    return this.#savedBand?.layout !== undefined;
  }

  /** As saved, for the fields: what is being typed only shows in the drawing. */
  get #savedBand(): Band | null {
    return this.#house.room?.bands.find(({ id }) => id === this.bandPlan?.id) ?? null;
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
