import { say } from '../../shared-core/words/index.ts';

/** What is typed into the field that finds, what it found, and which of that Enter goes to. */
export class FindAndGoState<Hit extends { readonly name: string; readonly what: string }> {
  readonly #find: (typed: string) => { readonly found: readonly Hit[]; readonly left: number };
  typed = $state('');
  /** The hit that Enter goes to; the first at once. */
  #chosen = $state(0);
  /** Whether the list was closed over what is typed. */
  #isClosed = $state(false);
  /** Whether the field is not the one being typed in. */
  isLeft = $state(true);

  readonly #answer = $derived.by(() => (this.isOpen ? this.#find(this.typed) : { found: [], left: 0 }));
  /** In words, for who can't see the list. */
  readonly words: string = $derived.by(() => this.#say());

  constructor(find: (typed: string) => { readonly found: readonly Hit[]; readonly left: number }) {
    this.#find = find;
  }

  get isOpen(): boolean {
    return this.typed.trim() !== '' && !this.#isClosed && !this.isLeft;
  }

  get hits(): readonly Hit[] {
    return this.#answer.found;
  }

  get left(): number {
    return this.#answer.left;
  }

  get chosen(): number | null {
    return this.hits.length === 0 ? null : this.#chosen;
  }

  type(typed: string): void {
    this.typed = typed;
    this.#chosen = 0;
    this.#isClosed = false;
  }

  clear(): void {
    this.type('');
  }

  /** What a key does: the hit it goes to, nothing more, or that it is none of this field's. */
  press(key: 'before' | 'next' | 'go' | 'close'): Hit | null | 'other' {
    if (key === 'close') {
      if (this.typed === '') return 'other';
      if (this.isOpen) this.#isClosed = true;
      else this.clear();
      return null;
    }
    if (key === 'before' || key === 'next') {
      const step = key === 'next' ? 1 : -1;
      if (this.isOpen) this.#chosen = this.hits.length === 0 ? 0 : (this.#chosen + step + this.hits.length) % this.hits.length;
      this.#isClosed = false;
      return null;
    }
    return (this.isOpen && this.hits[this.#chosen]) || null;
  }

  #say(): string {
    if (!this.isOpen) return '';
    if (this.hits.length === 0) return say`Nothing found.`;
    return say`${this.hits.length + this.left} found.`;
  }
}
