interface Told {
  readonly file: string;
  readonly revision: number;
}

const CHANNEL = 'struckline-houses';

/** Keeps the windows in which one house is open in step: each tells the others of its edits, and asks when it is looked at again. */
export class OtherWindows {
  readonly #channel = new BroadcastChannel(CHANNEL);
  readonly #file: string;
  readonly #stop = new AbortController();

  /** `onchange` is told the revision of another window's edit; null where it can only be asked for, after other programs too. */
  constructor(file: string, onchange: (revision: number | null) => void) {
    this.#file = file;
    const { signal } = this.#stop;
    this.#channel.addEventListener('message', ({ data }: MessageEvent<Told>) => data.file === file && onchange(data.revision), { signal });
    addEventListener('focus', () => onchange(null), { signal });
    document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && onchange(null), { signal });
  }

  tell(revision: number): void {
    this.#channel.postMessage({ file: this.#file, revision } satisfies Told);
  }

  close(): void {
    this.#stop.abort();
    this.#channel.close();
  }
}
