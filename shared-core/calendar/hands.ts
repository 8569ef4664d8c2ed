/**
 * How many of a crew are at work from when to when, in worked minutes.
 */
export class Hands {
  /** From `at[index]` on, up to the next one, `busy[index]` are at work; the last goes on for ever. */
  readonly #at: number[] = [0];
  readonly #busy: number[] = [0];
  readonly #people: number;

  constructor(people: number) {
    this.#people = people;
  }

  /** The first worked minute from one on from which so many have so many minutes to spare. */
  find(from: number, minutes: number, hands: number): number {
    const at = this.#at;
    const busy = this.#busy;
    const most = this.#people - hands;
    let index = this.#indexOf(from);
    let start = from;
    for (;;) {
      if (busy[index]! > most) {
        index += 1;
        start = at[index]!;
      } else {
        index += 1;
        if (index === at.length || at[index]! >= start + minutes) return start;
      }
    }
  }

  /** Puts so many to work from one minute to another; a number below 0 takes them off it again. */
  add(from: number, to: number, hands: number): void {
    const first = this.#split(from);
    const last = this.#split(to);
    for (let index = first; index < last; index += 1) this.#busy[index] = this.#busy[index]! + hands;
    this.#join(last);
    this.#join(first);
  }

  #indexOf(minute: number): number {
    const at = this.#at;
    let [low, high] = [0, at.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (at[middle]! <= minute) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  #split(minute: number): number {
    const index = this.#indexOf(minute);
    if (this.#at[index] === minute) return index;
    this.#at.splice(index + 1, 0, minute);
    this.#busy.splice(index + 1, 0, this.#busy[index]!);
    return index + 1;
  }

  #join(index: number): void {
    if (index === 0 || this.#busy[index] !== this.#busy[index - 1]) return;
    this.#at.splice(index, 1);
    this.#busy.splice(index, 1);
  }
}
