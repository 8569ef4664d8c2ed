/** Whether every word typed is said of something; nothing typed is said of everything. */
export function isSaid(typed: string, said: readonly string[]): boolean {
  const there = said.join(' ').toLowerCase();
  return typed.toLowerCase().split(/\s+/).every((word) => there.includes(word));
}

/** Which of two comes first, texts with figures in them by the figures. */
export function compare(one: string | number, other: string | number): number {
  return typeof one === 'number' && typeof other === 'number' ? one - other : String(one).localeCompare(String(other), undefined, { numeric: true });
}
