import { type Host, type Reply, type Settings, type SettingsRead, TEXT_SIZES, USUAL_SETTINGS } from '../../shared-core/contract/index.ts';
import { languageChosen, say, spokenLanguage } from '../../shared-core/words/index.ts';

export { type Settings, TEXT_SIZES };

/** What the user chose for every house's window, shown at once and kept by the host. */
export class AppearanceState {
  readonly #host: Host;
  readonly #asksForContrast = matchMedia('(prefers-contrast: more)');
  readonly #asksForStillness = matchMedia('(prefers-reduced-motion: reduce)');
  settings = $state.raw<Settings>(USUAL_SETTINGS);
  /** What the host said last where the settings could not be read or kept. */
  trouble = $state<string | null>(null);

  constructor(host: Host, read: Reply<SettingsRead>) {
    this.#host = host;
    if (read.ok) this.settings = read.value.settings;
    this.trouble = read.ok ? read.value.trouble : read.error.message;
    for (const query of [this.#asksForContrast, this.#asksForStillness]) query.addEventListener('change', () => this.#dress());
    this.#dress();
  }

  async change(part: Partial<Settings>): Promise<void> {
    this.settings = { ...this.settings, ...part };
    this.#dress();
    const reply = await this.#host.call('save-settings', { settings: this.settings });
    this.trouble = reply.ok ? null : say`This was not kept for the next start. ${reply.error.message}`;
    if (reply.ok && languageChosen(this.settings.language, navigator.language) !== spokenLanguage()) location.reload();
  }

  /** The style has each palette once, whoever asks for it; only the colour scheme it can take from the system by itself. */
  #dress(): void {
    const { scheme, contrast, textSize, motion } = this.settings;
    const { dataset, style } = document.documentElement;
    dataset['scheme'] = scheme;
    dataset['contrast'] = contrast === 'more' || this.#asksForContrast.matches ? 'more' : 'usual';
    dataset['motion'] = motion === 'none' || this.#asksForStillness.matches ? 'none' : 'some';
    style.fontSize = `${textSize}%`;
  }
}
