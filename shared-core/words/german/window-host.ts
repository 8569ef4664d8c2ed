import type { Words } from '../say.ts';

/** The German of what `src-renderer/host` says. */
export const WINDOW_HOST: Words = {
  'The program behind this window does not answer. What was saved is in the house file; start Struckline again.':
    'Das Programm hinter diesem Fenster antwortet nicht. Was gespeichert wurde, steht in der Hausdatei; Struckline neu starten.',
};
