import { createSubscriber } from 'svelte/reactivity';

/** Whether the window is narrow for the size of its text, in the measure of the style's container queries. */
export class NarrowWindow {
  readonly #widestRem: number;
  readonly #subscribe = createSubscriber((update) => {
    addEventListener('resize', update);
    const dressed = new MutationObserver(update);
    dressed.observe(document.documentElement, { attributeFilter: ['style'] });
    return () => {
      removeEventListener('resize', update);
      dressed.disconnect();
    };
  });

  constructor(widestRem: number) {
    this.#widestRem = widestRem;
  }

  get current(): boolean {
    this.#subscribe();
    return innerWidth <= this.#widestRem * parseFloat(getComputedStyle(document.documentElement).fontSize);
  }
}
