const CLEAR_OF_EDGE = 8;

/** Words wider than their field: moved to the left as far as they would stand out of the sheet at the right. */
export function keepOnSheet(words: HTMLElement): { destroy(): void } {
  const place = () => {
    words.style.marginLeft = '';
    const sheet = words.closest('main')?.getBoundingClientRect().right ?? innerWidth;
    const over = words.getBoundingClientRect().right + CLEAR_OF_EDGE - sheet;
    if (over > 0) words.style.marginLeft = `${-over}px`;
  };
  // Again when other words stand there, and when the window changes.
  const sized = new ResizeObserver(place);
  sized.observe(words);
  addEventListener('resize', place);
  return {
    destroy: () => {
      sized.disconnect();
      removeEventListener('resize', place);
    },
  };
}
