import { SvelteMap } from 'svelte/reactivity';
import type { Host } from '../../shared-core/contract/index.ts';
import { isKept, type Photo } from '../../shared-core/house/index.ts';

/** The photos themselves, which come one by one as they are looked at: the house's facts only point at them. */
export class PhotoImages {
  readonly #host: Host;
  readonly #file: string;
  readonly #known = new SvelteMap<string, string>();
  readonly #asked = new Set<string>();
  /** By photo: what was just added is shown on while the host's name for it is asked about. */
  readonly #latest = new Map<string, string>();

  constructor(host: Host, file: string) {
    this.#host = host;
    this.#file = file;
  }

  /** The photo as an address that an image shows; null while it is on its way, empty where the host does not have it. */
  addressOf({ id, image }: Photo): string | null {
    const address = isKept(image) ? this.#known.get(image) : image;
    if (address === undefined) void this.#ask(image);
    else this.#latest.set(id, address);
    return address ?? this.#latest.get(id) ?? null;
  }

  async #ask(image: string): Promise<void> {
    if (this.#asked.has(image)) return;
    this.#asked.add(image);
    const reply = await this.#host.call('read-photo', { file: this.#file, image });
    this.#known.set(image, reply.ok ? reply.value.image : '');
  }
}
