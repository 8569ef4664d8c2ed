import { assert, type Fault } from '../../shared-core/base/index.ts';
import type { Host, OpenedHouse, Reply } from '../../shared-core/contract/index.ts';
import { applyEdit, decodeHouse, type Edit, type House, type Room } from '../../shared-core/house/index.ts';
import { PhotoImages } from './photo-images.svelte.ts';
import { Planner } from './planner.svelte.ts';

/** The house that is open: its facts as saved, the draft being typed, and the plan of what is shown. */
export class HouseState {
  readonly #host: Host;
  readonly planner = new Planner();
  readonly file: string;
  readonly photoImages: PhotoImages;

  saved: House = $state.raw() as House;
  undoName = $state<string | null>(null);
  redoName = $state<string | null>(null);
  /** Edits on their way to the disk. */
  pending = $state(0);
  /** What the host said last when it could not do what was asked. */
  trouble = $state<string | null>(null);
  roomId = $state<string | null>(null);

  #draft = $state.raw<House | null>(null);
  #revision = 0;
  /** The facts as the host gave them last: what is surely on disk. */
  #confirmed: House | null = null;
  #queue: Promise<unknown> = Promise.resolve();

  /** What the screens show: the draft while something is being typed, else the facts as saved. */
  readonly shown: House = $derived(this.#draft ?? this.saved);
  /** The room that is looked at, as saved: what its fields show. */
  readonly room: Room | null = $derived(this.saved.rooms.find(({ id }) => id === this.roomId) ?? this.saved.rooms[0] ?? null);
  /** The same room with the draft in it: what its drawings show. */
  readonly shownRoom: Room | null = $derived(this.shown.rooms.find(({ id }) => id === this.room?.id) ?? null);
  readonly isSaved = $derived(this.pending === 0);

  constructor(host: Host, opened: OpenedHouse) {
    this.#host = host;
    this.file = opened.file;
    this.photoImages = new PhotoImages(host, opened.file);
    this.#take(opened);
  }

  get plan() {
    return this.planner.plan;
  }

  close(): void {
    this.planner.close();
  }

  /** Shows what an edit would do, without making it, and gives its faults; null shows the saved facts again. */
  preview(edit: Edit | null): readonly Fault[] {
    const tried = edit && applyEdit(this.saved, edit);
    this.#draft = tried?.ok ? tried.value : null;
    this.planner.ask(this.shown);
    return tried && !tried.ok ? tried.faults : [];
  }

  /**
   * Makes an edit: refused at once where its facts contradict others, else on screen at once and answered when saved.
   * Gives the faults; none means that it is on disk.
   */
  async edit(edit: Edit): Promise<readonly Fault[]> {
    const faults = this.#show(edit);
    return faults.length > 0 ? faults : this.#save(edit);
  }

  /**
   * Makes an edit without waiting for the disk, so that the next field is ready for the next keystroke.
   * Gives the faults of its facts; what the disk has to say comes as `trouble`.
   */
  editAtOnce(edit: Edit): readonly Fault[] {
    const faults = this.#show(edit);
    if (faults.length === 0) void this.#save(edit);
    return faults;
  }

  #show(edit: Edit): readonly Fault[] {
    const tried = applyEdit(this.saved, edit);
    this.#draft = null;
    if (tried.ok) this.saved = tried.value;
    this.planner.ask(this.saved);
    return tried.ok ? [] : tried.faults;
  }

  #save(edit: Edit): Promise<readonly Fault[]> {
    return this.#send(() => this.#host.call('edit-house', { file: this.file, revision: this.#revision, edit }));
  }

  async undo(): Promise<void> {
    await this.#send(() => this.#host.call('undo', { file: this.file, revision: this.#revision }));
  }

  async redo(): Promise<void> {
    await this.#send(() => this.#host.call('redo', { file: this.file, revision: this.#revision }));
  }

  async exportDocument(): Promise<{ readonly fileName: string; readonly text: string } | null> {
    await this.#queue;
    const reply = await this.#host.call('export-document', { file: this.file });
    if (reply.ok) return reply.value;
    this.trouble = reply.error.message;
    return null;
  }

  /** One call after the other, each with the revision that the one before left. */
  #send(call: () => Promise<Reply<OpenedHouse>>): Promise<readonly Fault[]> {
    this.pending += 1;
    const sent = this.#queue.then(async (): Promise<readonly Fault[]> => {
      const reply = await call();
      this.pending -= 1;
      if (reply.ok) {
        this.trouble = null;
        this.#take(reply.value);
        return [];
      }
      this.trouble = reply.error.message;
      await this.#openAgain();
      return reply.error.details.length > 0 ? reply.error.details : [{ path: '', message: reply.error.message }];
    });
    this.#queue = sent;
    return sent;
  }

  async #openAgain(): Promise<void> {
    const reply = await this.#host.call('open-house', { file: this.file });
    if (reply.ok) this.#take(reply.value);
    else if (this.#confirmed && this.pending === 0) {
      this.saved = this.#confirmed;
      this.planner.ask(this.shown);
    }
  }

  #take(opened: OpenedHouse): void {
    this.#revision = opened.revision;
    this.undoName = opened.undo;
    this.redoName = opened.redo;
    // While later edits are on their way the screen already shows them; the last answer brings the whole.
    if (this.pending > 0) return;
    const decoded = decodeHouse(opened.house);
    assert(decoded.ok, 'the host sends good houses');
    this.#confirmed = decoded.value;
    this.saved = decoded.value;
    this.planner.ask(this.shown);
  }
}
