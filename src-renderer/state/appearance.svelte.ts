import { type Host, type Settings, TEXT_SIZES, USUAL_SETTINGS } from '../../shared-core/contract/index.ts';

export { type Settings, TEXT_SIZES };

/** What the user chose for every house's window, shown at once and kept by the host. */
export class AppearanceState {
  readonly #host: Host;
  readonly #asksForContrast = matchMedia('(prefers-contrast: more)');
  readonly #asksForStillness = matchMedia('(prefers-reduced-motion: reduce)');
  settings = $state.raw<Settings>(USUAL_SETTINGS);
  /** Whether the window may be shown: before, it would be in another dress. */
  isRead = $state(false);
  /** What the host said last where the settings could not be read or kept. */
  trouble = $state<string | null>(null);

  constructor(host: Host) {
    this.#host = host;
    for (const query of [this.#asksForContrast, this.#asksForStillness]) query.addEventListener('change', () => this.#dress());
  }

  async read(): Promise<void> {
    const reply = await this.#host.call('read-settings', {});
    if (reply.ok) this.settings = reply.value.settings;
    this.trouble = reply.ok ? reply.value.trouble : reply.error.message;
    this.#dress();
    this.isRead = true;
  }

  async change(part: Partial<Settings>): Promise<void> {
    this.settings = { ...this.settings, ...part };
    this.#dress();
    const reply = await this.#host.call('save-settings', { settings: this.settings });
    this.trouble = reply.ok ? null : `This was not kept for the next start. ${reply.error.message}`;
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
