import { say } from '../../shared-core/words/index.ts';
import { type BackUps, type Host, type HostFacts, type HouseListing, LARGEST_CALL_BYTES, LARGEST_HOUSE_FILE_BYTES, type OpenedHouse, type Reply, type SettingsRead } from '../../shared-core/contract/index.ts';
import { AppearanceState } from './appearance.svelte.ts';
import { toBase64 } from './base64.ts';
import { HouseState } from './house.svelte.ts';
import { type Place, PLACES } from './places.ts';
import { BEGINNING_BYTES, FILES_TAKEN, kindOfFile, plainFileName } from './take-file.ts';

/** What is open, and where in the app the user is; the address keeps it over a reload. */
export class AppState {
  readonly #host: Host;
  readonly appearance: AppearanceState;
  facts = $state.raw<HostFacts | null>(null);
  houses = $state.raw<readonly HouseListing[] | null>(null);
  open = $state.raw<HouseState | null>(null);
  place = $state<Place>('house');
  isBusy = $state(false);
  trouble = $state<string | null>(null);
  troubleDetails = $state.raw<readonly string[]>([]);
  /** What was just done, where the window alone does not show it. */
  notice = $state<string | null>(null);

  constructor(host: Host, settings: Reply<SettingsRead>) {
    this.#host = host;
    this.appearance = new AppearanceState(host, settings);
  }

  async start(): Promise<void> {
    const facts = await this.#host.call('describe-host', {});
    if (facts.ok) this.facts = facts.value;
    const [, file, place] = location.hash.split('/').map(decodeURIComponent);
    if (PLACES.includes(place as Place)) this.place = place as Place;
    const first = file || (facts.ok ? facts.value.firstFile : null);
    if (first) await this.openHouse(first);
    if (!this.open) await this.listHouses();
  }

  async listHouses(): Promise<void> {
    const reply = await this.#host.call('list-houses', {});
    if (reply.ok) this.houses = reply.value;
    else this.#fail(reply);
  }

  openHouse(file: string): Promise<void> {
    return this.#enter(() => this.#host.call('open-house', { file }));
  }

  createHouse(name: string, lengths: 'imperial' | 'metric', currency: string): Promise<void> {
    return this.#enter(() => this.#host.call('create-house', { name, lengths, currency }), 'survey');
  }

  createDemo(): Promise<void> {
    return this.#enter(() => this.#host.call('create-demo', {}), 'order');
  }

  importDocument(text: string): Promise<void> {
    return this.#enter(() => this.#host.call('import-document', { text }), 'order');
  }

  /** Takes in a file that was dropped or chosen: a document becomes a new house, a house file is opened. */
  async takeFile(file: File): Promise<void> {
    let beginning: string;
    try {
      beginning = await file.slice(0, BEGINNING_BYTES).text();
    } catch {
      return this.say(say`${file.name} can't be read. If it is a folder, take the file that lies in it.`);
    }
    const kind = kindOfFile(file.name, beginning);
    if (kind === null) return this.say(say`${file.name} was not taken. ${FILES_TAKEN}`);
    if (kind === 'house' && this.#host.openDropped) return this.#enter(() => this.#host.openDropped!(file), 'order');
    const most = kind === 'house' ? LARGEST_HOUSE_FILE_BYTES : LARGEST_CALL_BYTES;
    if (file.size > most) {
      const instead = kind === 'house' ? say`Copy it into ${this.#folder}; it stands on the list then.` : say`A house is far smaller: check that it is the right file.`;
      return this.say(`${say`${file.name} is larger than the ${most / 1_000_000} MB that can be taken in so.`} ${instead}`);
    }
    if (kind === 'document') return this.importDocument(await file.text());
    const bytes = new Uint8Array(await file.arrayBuffer());
    await this.#enter(() => this.#host.call('take-house-file', { name: plainFileName(file.name), bytes: toBase64(bytes) }), 'order');
    if (this.open && !this.trouble) this.notice = say`${file.name} was taken in as a copy, ${this.open.file} in ${this.#folder}. The file itself stays as it was.`;
  }

  get #folder(): string {
    return this.facts?.folder ?? say`the folder of houses`;
  }

  /** Takes a house off the list that lies elsewhere; its file stays where it is. */
  async forgetHouse(file: string): Promise<void> {
    const reply = await this.#host.call('forget-house', { file });
    if (reply.ok) this.houses = reply.value;
    else this.#fail(reply);
  }

  backUpsOf(file: string): Promise<Reply<BackUps>> {
    return this.#host.call('list-back-ups', { file });
  }

  /** Opens a house as one of its back-ups has it; gives why it can't be, or null. */
  async restoreBackUp(file: string, backUp: string, when: string): Promise<string | null> {
    await this.open?.settled();
    return this.#enterWith(() => this.#host.call('restore-back-up', { file, backUp }), say`The back-up of ${when} is in place. What stood there before is kept among the back-ups.`);
  }

  /** Copies a house into the folder of houses and opens the copy; gives why it can't be, or null. */
  async copyHouse(file: string): Promise<string | null> {
    await this.open?.settled();
    return this.#enterWith(() => this.#host.call('copy-house', { file }), say`This is the copy. It lies in ${this.#folder}; the house it was made from stays as it was.`);
  }

  async #enterWith(call: () => Promise<Reply<OpenedHouse>>, done: string): Promise<string | null> {
    let why: string | null = null;
    await this.#enter(async () => {
      const reply = await call();
      if (!reply.ok) why = [reply.error.message, ...reply.error.details.map(({ message }) => message)].join(' ');
      return reply;
    });
    this.say(null);
    if (why === null) this.notice = done;
    return why;
  }

  openInWindow(file: string): void {
    const opened = window.open(this.#addressOf(file), '_blank', `popup,width=${innerWidth},height=${innerHeight}`);
    // The desktop shell opens the window itself and gives nothing back.
    if (!opened && this.facts?.shell === 'loopback') this.say(say`The browser did not open another window. Let this address open windows, then try again.`);
  }

  /** A window of the desktop shell asks nobody whether it may close: it does, as soon as all is on the disk. */
  async closeWhenSaved(): Promise<void> {
    if (this.facts?.shell !== 'desktop') return;
    await this.open?.settled();
    window.close();
  }

  /** Says what could not be done; null: nothing any more. */
  say(trouble: string | null): void {
    this.trouble = trouble;
    this.troubleDetails = [];
    this.notice = null;
  }

  goTo(place: Place): void {
    this.place = place;
    this.#remember();
  }

  async leaveHouse(): Promise<void> {
    const left = this.open;
    this.open = null;
    this.say(null);
    this.#remember();
    await left?.close();
    await this.listHouses();
  }

  async #enter(call: () => Promise<Reply<OpenedHouse>>, place: Place = this.place): Promise<void> {
    this.isBusy = true;
    this.say(null);
    const reply = await call();
    this.isBusy = false;
    if (!reply.ok) {
      this.#fail(reply);
      return;
    }
    void this.open?.close();
    this.open = new HouseState(this.#host, reply.value);
    this.place = place;
    this.#remember();
  }

  #fail(reply: Extract<Reply<unknown>, { ok: false }>): void {
    this.trouble = reply.error.message;
    this.troubleDetails = reply.error.details.map(({ path, message }) => `${path} ${message}`.trim());
  }

  #remember(): void {
    history.replaceState(null, '', this.open ? this.#addressOf(this.open.file) : location.pathname);
  }

  /** Where in the app a house is, at the place that is looked at now. */
  #addressOf(file: string): string {
    return `${location.pathname}#/${encodeURIComponent(file)}/${this.place}`;
  }
}
