/** Brings a part further down a sheet into sight, and the keyboard with it. */
export function goDownTo(id: string): void {
  const part = document.getElementById(id);
  part?.scrollIntoView();
  part?.focus();
}
