import { say } from '../../shared-core/words/index.ts';

interface Shortcut {
  /** Each alone does it: `Ctrl+Shift+Z`, `Escape`, `?`; Ctrl is the command key too. `Digit` is any of 1 to 9, `Arrow` any arrow. */
  readonly keys: readonly string[];
  readonly does: string;
}

interface ShortcutGroup {
  readonly title: string;
  readonly shortcuts: Readonly<Record<string, Shortcut>>;
}

/**
 * Every key that the window answers to, by where it does. The handlers ask `pressed` and the sheet of shortcuts shows
 * this, so a key that is not listed does nothing; a test keeps it so.
 *
 * Left to others: Ctrl with + - 0 and with digits, which are the browser's; single letters and Alt or Ctrl+Alt with
 * digits, which are screen readers', the browser's on some systems, or type characters.
 */
export const SHORTCUTS = {
  window: {
    title: say`Anywhere`,
    shortcuts: {
      keys: { keys: ['F1', '?'], does: say`This sheet; ? where nothing is being typed` },
      find: { keys: ['Ctrl+K', '/'], does: say`To the field that finds anything; / where nothing is being typed` },
      place: { keys: ['Ctrl+Shift+Digit'], does: say`To a place, counted from the top of the row of places` },
      undo: { keys: ['Ctrl+Z'], does: say`Undo; in a field that holds something new, only what was typed` },
      redo: { keys: ['Ctrl+Y', 'Ctrl+Shift+Z'], does: say`Do again what was undone` },
    },
  },
  find: {
    title: say`In the field that finds anything`,
    shortcuts: {
      before: { keys: ['ArrowUp'], does: say`To what was found before it` },
      next: { keys: ['ArrowDown'], does: say`To what was found next` },
      go: { keys: ['Enter'], does: say`Goes there` },
      close: { keys: ['Escape'], does: say`Closes the list; again, forgets what was typed` },
    },
  },
  rooms: {
    title: say`Where there is a row of rooms`,
    shortcuts: {
      before: { keys: ['Alt+PageUp'], does: say`To the room before` },
      after: { keys: ['Alt+PageDown'], does: say`To the room after` },
    },
  },
  survey: {
    title: say`In the survey`,
    shortcuts: {
      room: { keys: ['Ctrl+Enter'], does: say`Adds a room and goes to its name` },
    },
  },
  fields: {
    title: say`In a field`,
    shortcuts: {
      next: { keys: ['Enter'], does: say`Takes what was typed and goes on to the next field; in the last field of a new row, adds the row` },
      back: { keys: ['Escape'], does: say`Forgets what was typed, as long as the field is not left; in a table being pasted, closes it` },
    },
  },
  drawing: {
    title: say`In a drawing`,
    shortcuts: {
      left: { keys: ['ArrowLeft'], does: say`To the strip, wall or mark on the left` },
      right: { keys: ['ArrowRight'], does: say`To the strip, wall or mark on the right` },
      up: { keys: ['ArrowUp'], does: say`To the kind of mark before` },
      down: { keys: ['ArrowDown'], does: say`To the next kind of mark` },
      first: { keys: ['Home'], does: say`To the first of its kind` },
      last: { keys: ['End'], does: say`To the last of its kind` },
      pick: { keys: ['Enter', ' '], does: say`Picks it` },
      leave: { keys: ['Escape'], does: say`Points at nothing any more` },
      larger: { keys: ['+', '='], does: say`Larger` },
      smaller: { keys: ['-'], does: say`Smaller` },
      fit: { keys: ['0'], does: say`The whole drawing` },
    },
  },
  opening: {
    title: say`In the drawing of a wall, with an opening of it pointed at`,
    shortcuts: {
      take: { keys: ['Enter'], does: say`Takes the opening in hand; again, puts it down where it is` },
      move: { keys: ['Arrow', 'Shift+Arrow'], does: say`Moves what is in hand; with Shift further` },
      size: { keys: ['Alt+Arrow', 'Alt+Shift+Arrow'], does: say`Makes it wider, narrower, higher or lower; with Shift by more` },
      giveUp: { keys: ['Escape', 'Ctrl+Z'], does: say`Leaves it as it was` },
    },
  },
  calendar: {
    title: say`In the calendar, with a bar pointed at`,
    shortcuts: {
      take: { keys: ['Enter', ' '], does: say`Takes the bar in hand; again, puts it down on that day` },
      move: { keys: ['Arrow'], does: say`To the next bar or room; moves what is in hand by a day, up and down by a week` },
      first: { keys: ['Home'], does: say`To the first bar of the room` },
      last: { keys: ['End'], does: say`To the last bar of the room` },
      release: { keys: ['Delete'], does: say`Lets the plan choose the day again` },
      giveUp: { keys: ['Escape', 'Ctrl+Z'], does: say`Leaves what is in hand where it was` },
    },
  },
  papers: {
    title: say`In the list of papers`,
    shortcuts: {
      before: { keys: ['ArrowUp'], does: say`To the paper before` },
      next: { keys: ['ArrowDown'], does: say`To the next paper` },
      first: { keys: ['Home'], does: say`To the first paper` },
      last: { keys: ['End'], does: say`To the last paper` },
      print: { keys: ['Ctrl+P'], does: say`Prints the paper that is looked at, anywhere in Paperwork` },
    },
  },
  photos: {
    title: say`In a photo of a wall`,
    shortcuts: {
      before: { keys: ['ArrowLeft'], does: say`The photo before` },
      next: { keys: ['ArrowRight'], does: say`The next photo` },
    },
  },
  working: {
    title: say`In the working of a figure`,
    shortcuts: { close: { keys: ['Escape'], does: say`Closes it and goes back to its figure` } },
  },
  deliveries: {
    title: say`In the code of a package`,
    shortcuts: { separator: { keys: ['Ctrl+]'], does: say`The separator within a code, as readers send it` } },
  },
} as const satisfies Readonly<Record<string, ShortcutGroup>>;

type Group = keyof typeof SHORTCUTS;
type NameOf<Where extends Group> = keyof (typeof SHORTCUTS)[Where]['shortcuts'];

/** The shortcut of that group that a key event is, or null; a sign alone is none in a field, where it is typed, and behind a dialog the window has none. */
export function pressed<Where extends Group>(event: KeyboardEvent, where: Where): NameOf<Where> | null {
  if ((where === 'window' || where === 'rooms' || where === 'survey' || where === 'papers') && document.querySelector(':modal')) return null;
  const shortcuts: Readonly<Record<string, Shortcut>> = SHORTCUTS[where].shortcuts;
  const found = Object.entries(shortcuts).find(([, { keys }]) => keys.some((combination) => isPressed(event, combination)));
  return (found?.[0] as NameOf<Where> | undefined) ?? null;
}

/** Which of 1 to 9 was pressed with a shortcut of digits, whatever Shift makes of it on this keyboard. */
export function digitPressed(event: KeyboardEvent): number {
  return Number(event.code.slice('Digit'.length));
}

export type Arrow = 'left' | 'right' | 'up' | 'down';

/** Which arrow was pressed with a shortcut of arrows. */
export function arrowPressed(event: KeyboardEvent): Arrow {
  return event.key.slice('Arrow'.length).toLowerCase() as Arrow;
}

function isTypedInto(target: EventTarget | null): boolean {
  return target instanceof HTMLInputElement || target instanceof HTMLSelectElement || target instanceof HTMLTextAreaElement;
}

const SAID: Readonly<Record<string, string>> = {
  'Ctrl': say`Ctrl`,
  'Alt': say`Alt`,
  'Shift': say`Shift`,
  ' ': say`Space`,
  'Digit': say`1 to 9`,
  'Arrow': say`an arrow`,
  'ArrowLeft': '←',
  'ArrowRight': '→',
  'ArrowUp': '↑',
  'ArrowDown': '↓',
  'PageUp': say`Page up`,
  'PageDown': say`Page down`,
  'Home': say`Home`,
  'End': say`End`,
  'Enter': say`Enter`,
  'Escape': say`Esc`,
  'Delete': say`Delete`,
};

/** The keys of a combination as they are written on the sheet: `Alt+PageUp` is Alt and Page up. */
export function sayKeys(combination: string): readonly string[] {
  return partsOf(combination).map((key) => SAID[key] ?? key);
}

function isPressed(event: KeyboardEvent, combination: string): boolean {
  const parts = partsOf(combination);
  const key = parts.at(-1)!;
  if (parts.includes('Ctrl') !== (event.ctrlKey || event.metaKey) || parts.includes('Alt') !== event.altKey) return false;
  const isSign = /^[^\p{L}]$/u.test(key);
  // On many keyboards Shift is what makes a sign such as ? or +.
  if (!isSign && parts.includes('Shift') !== event.shiftKey) return false;
  if (isSign && parts.length === 1 && isTypedInto(event.target)) return false;
  if (key === 'Digit') return /^Digit[1-9]$/.test(event.code);
  return key === 'Arrow' ? event.key.startsWith('Arrow') : event.key.toLowerCase() === key.toLowerCase();
}

function partsOf(combination: string): readonly string[] {
  return combination.split(/\+(?=.)/);
}
