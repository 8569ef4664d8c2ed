import type { Host, HostFacts, HouseListing, OpenedHouse, Reply } from '../../shared-core/contract/index.ts';
import { AppearanceState } from './appearance.svelte.ts';
import { HouseState } from './house.svelte.ts';
import { type Place, PLACES } from './places.ts';

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

  constructor(host: Host) {
    this.#host = host;
    this.appearance = new AppearanceState(host);
  }

  async start(): Promise<void> {
    await this.appearance.read();
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

  goTo(place: Place): void {
    this.place = place;
    this.#remember();
  }

  async leaveHouse(): Promise<void> {
    this.open?.close();
    this.open = null;
    this.#remember();
    await this.listHouses();
  }

  async #enter(call: () => Promise<Reply<OpenedHouse>>, place: Place = this.place): Promise<void> {
    this.isBusy = true;
    this.trouble = null;
    this.troubleDetails = [];
    const reply = await call();
    this.isBusy = false;
    if (!reply.ok) {
      this.#fail(reply);
      return;
    }
    this.open?.close();
    this.open = new HouseState(this.#host, reply.value);
    this.place = place;
    this.#remember();
  }

  #fail(reply: Extract<Reply<unknown>, { ok: false }>): void {
    this.trouble = reply.error.message;
    this.troubleDetails = reply.error.details.map(({ path, message }) => `${path} ${message}`.trim());
  }

  #remember(): void {
    const hash = this.open ? `#/${encodeURIComponent(this.open.file)}/${this.place}` : '';
    history.replaceState(null, '', hash || location.pathname);
  }
}
