export type Listener = (...args: never[]) => unknown;

/** Listeners by event, called as Electron would call them. */
export class Listeners {
  #listeners: readonly { readonly event: string; readonly listener: Listener; readonly isOnce: boolean }[] = [];

  add(event: string, listener: Listener, isOnce = false): void {
    this.#listeners = [...this.#listeners, { event, listener, isOnce }];
  }

  emit(event: string, ...args: unknown[]): void {
    const called = this.#listeners.filter((one) => one.event === event);
    this.#listeners = this.#listeners.filter((one) => !(one.isOnce && called.includes(one)));
    for (const one of called) one.listener(...(args as never[]));
  }
}

/** An event of Electron's that can be held back. */
export function preventable(url = '') {
  const event = { url, isPrevented: false, preventDefault: () => void (event.isPrevented = true) };
  return event;
}
