import type { Delivery, House } from '../../../shared-core/house/index.ts';
import { type CheckedDelivery, keepLedger, type Ledger, type ReturnLine } from '../../../shared-core/ordering/index.ts';
import { nameRoom, sayUnits } from '../../../shared-core/plan/index.ts';
import { say } from '../../../shared-core/words/index.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import { today } from '../../parts/today.ts';
import type { HouseState } from '../../state/house.svelte.ts';
import { isAlike } from '../../state/is-alike.ts';
import { isUndecided } from '../../state/open-points.ts';
import { AfterHanging } from './after-hanging.svelte.ts';
import { type PatternRows, rowsAgainstOrder } from './against-order.ts';
import { type Decision, withDecision } from './decide.ts';
import { coveringsWithNumber, deliveredCoverings, received } from './labels.ts';
import { NextPackage, type PackageField } from './next-package.svelte.ts';
import { PastedPackages } from './pasted-packages.svelte.ts';
import { type Finding, quiet, sayPackage, sayReceived } from './say-package.ts';

/** A decision that was just taken, of which it is said what has come of it. */
interface Decided {
  readonly checked: CheckedDelivery;
  readonly decision: Decision;
}

/** What was said of what was just recorded, and the packages that it was said of, from their place in the house's list on. */
interface Recorded {
  readonly finding: Finding;
  readonly from: number;
  readonly packages: House['deliveries'];
}

/** One package of the house with its ledger and what it is. */
export interface PackageRow {
  readonly checked: CheckedDelivery;
  readonly finding: Finding;
}

/** What came, held against what was ordered, and the edits that record it. */
export class DeliveriesSheet {
  readonly #house: HouseState;
  readonly next: NextPackage;
  readonly pasted: PastedPackages;
  readonly after: AfterHanging;
  #recorded = $state.raw<Recorded | null>(null);
  decided = $state.raw<Decided | null>(null);
  packageFilter = $state('');
  orderFilter = $state('');
  /** What could not be done with a button, by the section it stands in. */
  trouble = $state<Readonly<Record<'packages' | 'decide' | 'returns', string | null>>>({ packages: null, decide: null, returns: null });

  readonly ledgers: readonly Ledger[] = $derived.by(() => deliveredCoverings(this.#house.saved).map(({ id }) => keepLedger(this.#house.saved, id)));
  readonly hasOrders: boolean = $derived.by(() => this.ledgers.some(({ lines }) => lines.length > 0));
  /** In the order in which they were recorded. */
  readonly packages: readonly PackageRow[] = $derived.by(() =>
    this.ledgers
      .flatMap((ledger) => ledger.deliveries.map((checked) => ({ checked, finding: sayPackage(this.#house.saved, ledger, checked) })))
      .toSorted((one, other) => one.checked.index - other.checked.index),
  );
  readonly undecided: readonly CheckedDelivery[] = $derived.by(() => this.packages.map(({ checked }) => checked).filter(isUndecided));
  readonly patterns: readonly PatternRows[] = $derived.by(() => rowsAgainstOrder(this.#house.saved, this.ledgers));
  /** What was last recorded means, until the next is typed or something of it is decided, corrected or undone. */
  readonly said: Finding | null = $derived.by(() => (this.#recorded && isAlike(this.#house.saved.deliveries.slice(this.#recorded.from), this.#recorded.packages) ? this.#recorded.finding : null));
  /** In a sentence what the last decision has come to, once the rooms are planned anew. */
  readonly decidedWords: string | null = $derived.by(() => this.decided && this.#sayDecided(this.decided));

  /** Whether the plan is of what is recorded by now, and none that a better one follows: what it says may be recorded. */
  readonly isPlanned: boolean = $derived.by(() => {
    const { planned, isQuick } = this.#house.planner;
    return planned !== null && !isQuick && (['orders', 'deliveries', 'returns', 'runChoices', 'rooms'] as const).every((list) => isAlike(planned[list], this.#house.saved[list]));
  });

  constructor(house: HouseState) {
    this.#house = house;
    this.next = new NextPackage(() => house.saved);
    this.pasted = new PastedPackages(() => house.saved);
    this.after = new AfterHanging(house);
  }

  ledgerOf(covering: string): Ledger {
    return this.ledgers.find((ledger) => ledger.covering === covering) ?? keepLedger(this.#house.saved, covering);
  }

  type(field: PackageField, text: string): void {
    this.#recorded = null;
    this.next.type(field, text);
  }

  /** Records the package that stands in the fields; false where something is wrong with one of them. */
  record(): boolean {
    const one = this.next.read();
    if (!one) return false;
    const refused = sayFaults(this.#house.editAtOnce({ kind: 'set-deliveries', deliveries: [...copies(this.#house.saved.deliveries), one] }));
    if (refused) {
      this.next.refuse(`${refused} ${say`Nothing was recorded.`}`);
      return false;
    }
    this.next.clear();
    const place = this.#house.saved.deliveries.length - 1;
    const { checked, ledger } = this.#checkedAt(place);
    this.#say(sayReceived(this.#house.saved, ledger, checked), place);
    return true;
  }

  /** Takes the pasted rows as packages, all of them or none. */
  takePasted(): boolean {
    const taken = this.pasted.packages;
    const before = this.#house.saved.deliveries.length;
    this.pasted.refused = sayFaults(this.#house.editAtOnce({ kind: 'set-deliveries', deliveries: [...copies(this.#house.saved.deliveries), ...taken] }));
    if (this.pasted.refused) return false;
    this.pasted.clear();
    const waiting = this.undecided.filter(({ index }) => index >= before).length;
    const words = taken.length === 1 ? say`${taken.length} package recorded.` : say`${taken.length} packages recorded.`;
    const wait = waiting === 1 ? say`${waiting} of them waits for a decision.` : say`${waiting} of them wait for a decision.`;
    this.#say(waiting > 0 ? { sign: '≠', words: `${words} ${wait}`, tone: 'stop' } : quiet(words), before);
    return true;
  }

  decide(checked: CheckedDelivery, decision: Decision): void {
    const faults = this.#house.editAtOnce({ kind: 'set-deliveries', deliveries: copies(withDecision(this.#house.saved, checked.index, decision)) });
    this.trouble = { ...this.trouble, decide: sayFaults(faults) };
    this.decided = faults.length > 0 ? null : { checked, decision };
  }

  changePackage = (index: number, change: Partial<Delivery>): Promise<string | null> =>
    this.#setDeliveries(this.#house.saved.deliveries.map((delivery, place) => (place === index ? { ...delivery, ...change } : delivery)));

  changeDecision = (index: number, decision: Decision | null): Promise<string | null> => this.#setDeliveries(withDecision(this.#house.saved, index, decision));

  /** A label's number: that of a covering of the house moves the package to it, another one stands as a wrong pattern. */
  changeLabel = async (index: number, typed: string): Promise<string | null> => {
    if (typed.trim() === '') return say`The package wants its pattern number, as it stands on the label.`;
    const known = coveringsWithNumber(this.#house.saved, typed);
    return this.changePackage(index, { patternNumber: typed.trim(), ...(known.length === 1 ? { covering: known[0]!.id } : {}) });
  };

  changeRun = async (index: number, typed: string): Promise<string | null> =>
    typed.trim() === '' ? say`The run wants its number, as it stands on the label.` : this.changePackage(index, { run: typed.trim() });

  changeCount = (index: number, field: 'rolls' | 'damaged' | 'short') => async (typed: string) =>
    /^\d{1,6}$/.test(typed.trim()) ? this.changePackage(index, { [field]: Number(typed) }) : say`This takes a whole number.`;

  changeDay = (index: number) => async (typed: string) => {
    const day = received(typed);
    if ('trouble' in day) return day.trouble;
    const deliveries = this.#house.saved.deliveries.map((delivery, place) => {
      const { received: _before, ...rest } = delivery;
      return place === index ? { ...rest, ...day } : delivery;
    });
    return this.#setDeliveries(deliveries);
  };

  removePackage(index: number): void {
    const faults = this.#house.editAtOnce({ kind: 'set-deliveries', deliveries: copies(this.#house.saved.deliveries.filter((_, place) => place !== index)) });
    this.trouble = { ...this.trouble, packages: sayFaults(faults) };
  }

  sendBack({ covering, run, rolls }: ReturnLine): void {
    if (run === null) return;
    this.#takeReturns([...this.#house.saved.returns, { covering, run, rolls, sent: today() }]);
  }

  removeReturn(index: number): void {
    this.#takeReturns(this.#house.saved.returns.filter((_, place) => place !== index));
  }

  #takeReturns(returns: House['returns']): void {
    this.trouble = { ...this.trouble, returns: sayFaults(this.#house.editAtOnce({ kind: 'set-returns', returns: returns.map((one) => ({ ...one })) })) };
  }

  async #setDeliveries(deliveries: House['deliveries']): Promise<string | null> {
    return sayFaults(await this.#house.edit({ kind: 'set-deliveries', deliveries: copies(deliveries) }));
  }

  #say(finding: Finding, from: number): void {
    this.#recorded = { finding, from, packages: this.#house.saved.deliveries.slice(from) };
  }

  #checkedAt(index: number): { readonly checked: CheckedDelivery; readonly ledger: Ledger } {
    const ledger = this.ledgerOf(this.#house.saved.deliveries[index]!.covering);
    return { ledger, checked: ledger.deliveries.find((one) => one.index === index)! };
  }

  #sayDecided({ checked: { index, delivery, sound, gone }, decision }: Decided): string | null {
    const house = this.#house.saved;
    // Undone meanwhile, or decided otherwise.
    if (!isAlike(house.deliveries[index], { ...delivery, decision })) return null;
    const { covering, run, patternNumber } = delivery;
    if (decision === 'send-back') return say`${sayUnits(house, covering, sound - gone)} of ${patternNumber}, run ${run}, go back: they stand under ‘To go back’ until they are gone.`;
    const kept = say`Run ${run} of ${patternNumber} is kept.`;
    if (!this.isPlanned) return `${kept} ${say`The rooms are being planned anew.`}`;
    const rooms = this.#house.plan?.order.find((line) => line.covering === covering && line.run === run)?.rooms.map((room) => nameRoom(house, room)) ?? [];
    if (rooms.length === 0) return `${kept} ${say`No room hangs from it.`}`;
    return `${kept} ${rooms.length === 1 ? say`${rooms[0]!} hangs from it now.` : say`${rooms.join(', ')} hang from it now.`}`;
  }
}

const sheets = new WeakMap<HouseState, DeliveriesSheet>();

/** The sheet of a house that is open: one for as long as it is, so that nothing typed is lost when another place is looked at. */
export function sheetOf(house: HouseState): DeliveriesSheet {
  const there = sheets.get(house);
  if (there) return there;
  // On its own: what is derived in it outlives the component that asks first.
  let made!: DeliveriesSheet;
  $effect.root(() => {
    made = new DeliveriesSheet(house);
  });
  sheets.set(house, made);
  return made;
}

function copies(deliveries: readonly Delivery[]) {
  return deliveries.map((delivery) => ({ ...delivery }));
}
