/** Numbers of which the one with the smallest key comes out first, of equal keys the smallest number. */
export class Heap {
  readonly #numbers: number[] = [];
  readonly #keys: readonly number[];

  constructor(keys: readonly number[]) {
    this.#keys = keys;
  }

  push(number: number): void {
    const numbers = this.#numbers;
    let place = numbers.push(number) - 1;
    while (place > 0) {
      const above = (place - 1) >> 1;
      if (!this.#isBefore(number, numbers[above]!)) break;
      numbers[place] = numbers[above]!;
      place = above;
    }
    numbers[place] = number;
  }

  pop(): number | undefined {
    const numbers = this.#numbers;
    const first = numbers[0];
    const last = numbers.pop();
    if (last === undefined || numbers.length === 0) return first;
    let place = 0;
    for (;;) {
      let below = 2 * place + 1;
      if (below >= numbers.length) break;
      if (below + 1 < numbers.length && this.#isBefore(numbers[below + 1]!, numbers[below]!)) below += 1;
      if (!this.#isBefore(numbers[below]!, last)) break;
      numbers[place] = numbers[below]!;
      place = below;
    }
    numbers[place] = last;
    return first;
  }

  #isBefore(one: number, other: number): boolean {
    return this.#keys[one]! < this.#keys[other]! || (this.#keys[one] === this.#keys[other] && one < other);
  }
}
