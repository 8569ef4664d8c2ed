import { pressed } from './shortcuts.ts';

/**
 * A sheet that is typed top to bottom: Enter leaves the field and goes to the next one, as Tab does, and from the last
 * one to the button that takes it all.
 *
 * What a field does when it is left is the field's own affair; who handles Enter otherwise prevents it here.
 */
export function enterMovesOn(sheet: HTMLElement): { destroy(): void } {
  const onKey = (event: KeyboardEvent): void => {
    const { target } = event;
    if (pressed(event, 'fields') !== 'next' || event.defaultPrevented || !(target instanceof Node && sheet.contains(target)) || !(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)) return;
    event.preventDefault();
    const fields = [...sheet.querySelectorAll<HTMLElement>('input:not([type=checkbox], [hidden], :disabled), select:not(:disabled)')];
    // By its place, because a checkbox is none of them and Enter goes on from there too.
    const follows = (element: HTMLElement) => target.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING;
    const next = fields.find(follows) ?? [...sheet.querySelectorAll<HTMLElement>('button.main-button:not(:disabled)')].find(follows);
    if (next) focusField(next);
    else target.blur();
    if (target instanceof HTMLInputElement) comeBack(target, next ?? null);
  };
  // Not at the sheet: the handlers in the markup are run further out, and are asked first.
  addEventListener('keydown', onKey);
  return { destroy: () => removeEventListener('keydown', onKey) };
}

/** Back to a field whose text is refused, as long as nothing was done since; Enter once more leaves it as it is. */
function comeBack(field: HTMLInputElement, next: HTMLElement | null): void {
  const observer = new MutationObserver(() => {
    if (field.getAttribute('aria-invalid') === 'true' && (document.activeElement === next || document.activeElement === document.body)) field.focus();
  });
  const stop = () => {
    observer.disconnect();
    for (const event of ['keydown', 'pointerdown', 'focusout'] as const) removeEventListener(event, stop, true);
  };
  observer.observe(field, { attributeFilter: ['aria-invalid'] });
  for (const event of ['keydown', 'pointerdown', 'focusout'] as const) addEventListener(event, stop, true);
}

export function focusField(field: HTMLElement): void {
  field.focus();
  if (field instanceof HTMLInputElement) field.select();
}
