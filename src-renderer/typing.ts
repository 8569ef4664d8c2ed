/** What is being typed in a house's window, wherever it stands: of that the browser undoes, and not the house. */
export class Typing {
  /** Whether something was typed since the field was entered, and not all of it undone again. */
  #isUnder = false;
  #valueEntered = '';
  /** The field that a press of the pointer has just entered. */
  #pressed: EventTarget | null = null;

  isIn(target: EventTarget | null): boolean {
    return this.#isUnder && isTypedIn(target);
  }

  readonly onfocusin = ({ target }: FocusEvent): void => {
    this.#isUnder = false;
    this.#valueEntered = isTypedIn(target) ? target.value : '';
  };

  readonly oninput = (event: Event): void => {
    if (event instanceof InputEvent && isTypedIn(event.target)) this.#isUnder = !event.inputType.startsWith('history') || event.target.value !== this.#valueEntered;
  };

  /** It was given up. */
  end(): void {
    this.#isUnder = false;
  }

  readonly onpointerdown = ({ target }: PointerEvent): void => {
    this.#pressed = target === document.activeElement ? null : target;
  };

  /** A field that is entered by a click is typed over, as one that Enter goes to. */
  readonly onclick = ({ target }: MouseEvent): void => {
    if (target === this.#pressed && target instanceof HTMLInputElement && target.type === 'text' && target.selectionStart === target.selectionEnd) target.select();
  };
}

function isTypedIn(target: EventTarget | null): target is HTMLInputElement | HTMLTextAreaElement {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
}
