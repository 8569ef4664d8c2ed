import type { CalendarPlan, HouseJob } from '../calendar/index.ts';
import type { CostPlan } from '../costing/index.ts';
import type { CoveringOrder, CutList, LeftOfRun, OrderLine, RoomReadiness } from '../ordering/index.ts';
import type { BorderLayout, CeilingLayout, Clash, LayoutOption, MuralLayout, StretchLayout } from '../setting-out/index.ts';
import type { PrepPlan } from '../prep/index.ts';
import type { Outline } from '../survey/index.ts';

/** A stretch of strips as it is planned, and the other layouts that are worth a look. */
export type PlannedStretch = StretchLayout & {
  /** The best of all first; none at the quick effort. */
  readonly options: readonly LayoutOption[];
} & Partial<Pick<MuralLayout, 'shortage' | 'leftOut' | 'offTop' | 'offFoot'>>;

/** A band set out: every stretch of it, with its strips or lengths. */
export type BandPlan = {
  readonly id: string;
  readonly covering: string;
  /** Rolls when this band alone is cut from them. */
  readonly rollsAlone: number;
} & (
  | { readonly kind: 'strips'; readonly stretches: readonly PlannedStretch[] }
  | { readonly kind: 'lengths'; readonly stretches: readonly BorderLayout[]; readonly clashes: readonly Clash[] }
);

/** A ceiling set out, with the rolls it takes when it alone is cut from them. */
export interface CeilingPlan extends CeilingLayout {
  readonly covering: string;
  readonly rollsAlone: number;
}

export interface RoomPlan {
  readonly id: string;
  readonly name: string;
  readonly outline: Outline;
  readonly bands: readonly BandPlan[];
  /** Null where nothing that comes in strips hangs overhead. */
  readonly ceiling: CeilingPlan | null;
}

/** Something worth a look, in words; it stops nothing. */
export interface Remark {
  /** Where in the work it is mended. */
  readonly place: 'survey' | 'prep' | 'coverings' | 'set-out' | 'order' | 'deliveries';
  readonly room: string | null;
  readonly message: string;
  /** Advice for who hangs it: there is nothing to answer or to mend. */
  readonly isAdvice?: true;
  /** The covering that such advice is about. */
  readonly covering?: string;
}

/** The runs of one covering: what there is, what was ordered and came, and what follows from that. */
export type CoveringRuns = { readonly covering: string } & Pick<CoveringOrder, 'ledger' | 'runs' | 'isBestAssignment' | 'waysOut' | 'difference' | 'returns'>;

/** Everything computed from a house's facts. */
export interface HousePlan {
  readonly rooms: readonly RoomPlan[];
  readonly order: readonly OrderLine[];
  readonly cuts: readonly CutList[];
  readonly runs: readonly CoveringRuns[];
  /** Of each room in which something from rolls hangs. */
  readonly readiness: readonly RoomReadiness[];
  /** What the surfaces want, and the paint they take. */
  readonly prep: PrepPlan;
  /** All the work there is, in the order of the rooms. */
  readonly jobs: readonly HouseJob[];
  /** The work in days; null as long as nobody says when it starts. */
  readonly calendar: CalendarPlan | null;
  readonly cost: CostPlan;
  /** What is left when all is hung. */
  readonly left: readonly LeftOfRun[];
  /** What cannot be met: a piece that no roll gives, a room that no run can hang. */
  readonly problems: readonly Remark[];
  readonly warnings: readonly Remark[];
}
