const SHOWN_MILLISECONDS = 4_000;
let hiding: ReturnType<typeof setTimeout> | undefined;

/** Says what was just done in the one line at the window's foot. */
export function sayAtFoot(words: string): void {
  const line = lineAtFoot();
  clearTimeout(hiding);
  line.textContent = words;
  hiding = setTimeout(() => (line.textContent = ''), SHOWN_MILLISECONDS);
}

/** It is there before it says anything, so that it is read out. */
export function lineAtFoot(): HTMLElement {
  const there = document.querySelector<HTMLElement>('.said-at-foot');
  if (there) return there;
  const line = document.createElement('p');
  line.classList.add('said-at-foot', 'small');
  line.setAttribute('role', 'status');
  document.body.append(line);
  return line;
}
