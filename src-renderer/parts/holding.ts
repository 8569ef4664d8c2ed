/** An attachment: the element holds that one, or nothing. */
export function holding(child: Element | null): (holder: Element) => void {
  return (holder) => holder.replaceChildren(...(child ? [child] : []));
}
