import { existsSync, readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { type Settings, type SettingsRead, settingsSchema, USUAL_SETTINGS } from '../../shared-core/contract/index.ts';
import { decodeFacts } from '../../shared-core/house/index.ts';
import { say } from '../../shared-core/words/index.ts';
import { SETTINGS_NAME, writeOwn } from './own-folder.ts';

const VERSION = 1;
const SET_ASIDE = 'settings-not-read.json';

/** The settings of a user in a small JSON file; what can't be read never stops the app and is never thrown away. */
export class SettingsFile {
  readonly #folder: string;
  readonly #path: string;

  constructor(folder: string) {
    this.#folder = folder;
    this.#path = join(folder, SETTINGS_NAME);
  }

  read(): SettingsRead {
    if (!existsSync(this.#path)) return { settings: USUAL_SETTINGS, trouble: null };
    const read = this.#parse();
    if (typeof read !== 'string') return { settings: read, trouble: null };
    return { settings: USUAL_SETTINGS, trouble: `${read} ${say`The usual ones hold; a change makes a new file and keeps this one as ${SET_ASIDE}.`}` };
  }

  save(settings: Settings): SettingsRead {
    if (this.read().trouble !== null) renameSync(this.#path, join(this.#folder, SET_ASIDE));
    writeOwn(this.#path, { version: VERSION, ...settings });
    return { settings, trouble: null };
  }

  /** The settings, or a sentence of what is wrong with the file. */
  #parse(): Settings | string {
    let raw: unknown;
    try {
      raw = JSON.parse(readFileSync(this.#path, 'utf8'));
    } catch (error) {
      return this.#unreadable((error as Error).message);
    }
    if (typeof raw !== 'object' || raw === null || !('version' in raw)) return say`The settings in ${this.#path} are not settings of Struckline.`;
    const { version, ...rest } = raw;
    if (version !== VERSION) return say`The settings in ${this.#path} are of version ${JSON.stringify(version)}; this Struckline reads version ${VERSION}.`;
    const decoded = decodeFacts(settingsSchema, rest, '');
    return decoded.ok ? decoded.value : this.#unreadable(decoded.faults.map(({ path, message }) => `${path} ${message}`.trim()).join('; '));
  }

  #unreadable(why: string): string {
    return say`The settings in ${this.#path} can't be read: ${why}.`;
  }
}
