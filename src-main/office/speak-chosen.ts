import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { languageChosen, speak } from '../../shared-core/words/index.ts';
import { ownFolder, type OwnFolderSurroundings, SETTINGS_NAME } from './own-folder.ts';

/** Speaks the language that the user chose, else the machine's; it is called before anything is loaded that says something. */
export function speakChosen(surroundings: OwnFolderSurroundings): void {
  speak(languageChosen(choiceIn(ownFolder(surroundings)), Intl.DateTimeFormat().resolvedOptions().locale));
}

/** What is wrong with the settings is told by whoever reads them all. */
function choiceIn(folder: string): string {
  try {
    return String((JSON.parse(readFileSync(join(folder, SETTINGS_NAME), 'utf8')) as { language?: unknown }).language ?? 'system');
  } catch {
    return 'system';
  }
}
