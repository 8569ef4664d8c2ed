/** Which of two comes first, texts with figures in them by the figures. */
export function compare(one: string | number, other: string | number): number {
  return typeof one === 'number' && typeof other === 'number' ? one - other : String(one).localeCompare(String(other), undefined, { numeric: true });
}
