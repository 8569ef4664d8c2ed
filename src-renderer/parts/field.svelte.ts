import { pressed } from './shortcuts.ts';

/** What a field shows and says: the fact, what is being typed over it, and what was wrong with that. */
export class FieldState {
  /** What is typed and not taken yet; null while the field shows the fact. */
  typed = $state<string | null>(null);
  trouble = $state<string | null>(null);

  readonly #fact: () => string;
  readonly shown: string = $derived.by(() => this.typed ?? this.#fact());

  constructor(fact: () => string) {
    this.#fact = fact;
  }

  /** Takes what is typed, or keeps it with the reason why it can't be taken. */
  async take(commit: (typed: string) => Promise<string | null>): Promise<boolean> {
    const { typed } = this;
    if (typed === null || typed === this.#fact()) {
      this.typed = null;
      this.trouble = null;
      return true;
    }
    const trouble = await commit(typed);
    // Typed on meanwhile: that is for the next time the field is left.
    if (this.typed !== typed) return trouble === null;
    this.trouble = trouble;
    if (trouble === null) this.typed = null;
    return trouble === null;
  }

  /** Whether a key gave up what is typed; it goes no further then. */
  readonly onkeydown = (event: KeyboardEvent): boolean => {
    if (this.typed === null || pressed(event, 'fields') !== 'back') return false;
    event.stopPropagation();
    this.typed = null;
    this.trouble = null;
    return true;
  };
}
