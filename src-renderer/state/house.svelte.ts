import { say } from '../../shared-core/words/index.ts';
import { assert, type Fault } from '../../shared-core/base/index.ts';
import type { Host, OpenedHouse, Reply, SavedPaper, WrittenPaper, WrittenText } from '../../shared-core/contract/index.ts';
import { applyEdit, decodeHouse, type Edit, type House, type Room } from '../../shared-core/house/index.ts';
import type { PaperForm, PaperName, PaperSize } from '../../shared-core/plan/index.ts';
import { fromBase64 } from './base64.ts';
import { isAlike } from './is-alike.ts';
import { OtherWindows } from './other-windows.ts';
import { PhotoImages } from './photo-images.svelte.ts';
import { Planner } from './planner.svelte.ts';

/** Said of edits that were made on top of facts which another window has changed since. */
const MADE_ON_OLD_FACTS = say`The house was changed in another window meanwhile; this change was not made. Look at the house as it is now and make it again.`;

/** A paper as the host made it: its bytes are what is shown, saved and printed. */
export type PaperBytes = Omit<WrittenPaper, 'bytes'> & { readonly bytes: Uint8Array };

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
  /** Whether the last edit did not reach the disk, so that it is shown no longer. */
  #isLost = $state(false);
  /** What the host said last when it could not do what was asked. */
  trouble = $state<string | null>(null);
  roomId = $state<string | null>(null);
  /** The paper that is looked at; where there is no such paper, the first there is. */
  paper = $state.raw<PaperName | null>(null);

  /** Why it can be looked at but not changed, in words. */
  lookOnly = $state<string | null>(null);

  #draft = $state.raw<House | null>(null);
  #previewed: Edit | null = null;
  #revision = $state(0);
  /** The facts as the host gave them last: what is surely on disk. */
  #confirmed: House | null = null;
  #queue: Promise<unknown> = Promise.resolve();
  /** Counts up where edits that wait were made on facts that are no longer so: they are not sent. */
  #era = 0;
  /** The newest revision that another window told of. */
  #heard = 0;
  readonly #others: OtherWindows;

  /** What the screens show: the draft while something is being typed, else the facts as saved. */
  readonly shown: House = $derived(this.#draft ?? this.saved);
  /** The room that is looked at, as saved: what its fields show. */
  readonly room: Room | null = $derived(this.saved.rooms.find(({ id }) => id === this.roomId) ?? this.saved.rooms[0] ?? null);
  /** The same room with the draft in it: what its drawings show. */
  readonly shownRoom: Room | null = $derived(this.shown.rooms.find(({ id }) => id === this.room?.id) ?? null);
  readonly isSaved = $derived(this.pending === 0);
  readonly saveWord: string = $derived(!this.isSaved ? say`Saving` : this.#isLost ? say`Not saved` : say`Saved`);

  constructor(host: Host, opened: OpenedHouse) {
    this.#host = host;
    this.file = opened.file;
    this.photoImages = new PhotoImages(host, opened.file);
    this.#take(opened);
    this.#others = new OtherWindows(opened.file, (revision) => void this.#catchUp(revision));
  }

  /** Of the facts on the disk, as far as this window knows. */
  get revision(): number {
    return this.#revision;
  }

  get plan() {
    return this.planner.plan;
  }

  /** Lets go of the house; settles when what is on its way is on the disk. */
  async close(): Promise<void> {
    await this.settled();
    this.planner.close();
    this.#others.close();
  }

  /** Settles when nothing is on its way to the disk. */
  async settled(): Promise<void> {
    while (this.pending > 0) await this.#queue;
  }

  /** Shows what an edit would do, without making it, and gives its faults; null shows the saved facts again. */
  preview(edit: Edit | null): readonly Fault[] {
    this.#previewed = edit;
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
    this.#previewed = null;
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

  /** A document to be kept as a file; null where `trouble` says why there is none. */
  async exportDocument(): Promise<WrittenText | null> {
    await this.#queue;
    const reply = await this.#host.call('export-document', { file: this.file });
    if (reply.ok) return reply.value;
    this.trouble = reply.error.message;
    return null;
  }

  /** Makes a paper of the house as it is on the disk, once all that is on its way is there. */
  async makePaper({ kind, of }: PaperName, form: PaperForm, size: PaperSize): Promise<Reply<PaperBytes>> {
    await this.settled();
    const reply = await this.#host.call('write-paper', { file: this.file, paper: { kind, of }, form, size });
    return reply.ok ? { ok: true, value: { ...reply.value, bytes: fromBase64(reply.value.bytes) } } : reply;
  }

  /** The same, put into the folder of papers beside the house file. */
  async savePaper({ kind, of }: PaperName, form: PaperForm, size: PaperSize): Promise<Reply<SavedPaper>> {
    await this.settled();
    return this.#host.call('save-paper', { file: this.file, paper: { kind, of }, form, size });
  }

  /** Gives up every paper that is being made; whoever waits for one is told so. */
  async stopPapers(): Promise<void> {
    await this.#host.call('stop-papers', { file: this.file });
  }

  /** One call after the other, each with the revision that the one before left. */
  #send(call: () => Promise<Reply<OpenedHouse>>): Promise<readonly Fault[]> {
    this.pending += 1;
    const era = this.#era;
    const sent = this.#queue.then(async (): Promise<readonly Fault[]> => {
      if (era !== this.#era) {
        this.pending -= 1;
        if (this.pending === 0) await this.#openAgain();
        return [{ path: '', message: MADE_ON_OLD_FACTS }];
      }
      const reply = await call();
      this.pending -= 1;
      this.#isLost = !reply.ok && reply.error.code === 'host-failure';
      if (reply.ok) {
        this.trouble = null;
        this.#take(reply.value);
        this.#others.tell(reply.value.revision);
        if (this.#heard > this.#revision) void this.#catchUp(null);
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
    const before = this.#revision;
    const reply = await this.#host.call('open-house', { file: this.file });
    if (reply.ok) {
      if (reply.value.revision !== before) this.#era += 1;
      this.#take(reply.value);
    }
    else if (this.#confirmed && this.pending === 0) {
      this.saved = this.#confirmed;
      this.planner.ask(this.shown);
    }
  }

  /** Takes over what others have changed, where nothing of one's own is on its way; otherwise the host judges that first. */
  async #catchUp(told: number | null): Promise<void> {
    this.#heard = Math.max(this.#heard, told ?? 0);
    const revision = this.#revision;
    if (this.pending > 0 || (told !== null && told <= revision)) return;
    const reply = await this.#host.call('house-since', { file: this.file, revision });
    if (!reply.ok || reply.value === null || this.pending > 0 || this.#revision !== revision) return;
    this.#take(reply.value);
    if (this.#previewed) this.preview(this.#previewed);
  }

  #take(opened: OpenedHouse): void {
    this.#revision = opened.revision;
    this.undoName = opened.undo;
    this.redoName = opened.redo;
    this.lookOnly = opened.lookOnly;
    // While later edits are on their way the screen already shows them; the last answer brings the whole.
    if (this.pending > 0) return;
    const decoded = decodeHouse(opened.house);
    assert(decoded.ok, 'the host sends good houses');
    // What is shown already stays the same house, so that no screen works it out again.
    if (!isAlike(decoded.value, this.saved)) this.saved = decoded.value;
    this.#confirmed = this.saved;
    this.planner.ask(this.shown);
  }
}
