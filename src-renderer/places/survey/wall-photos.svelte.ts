import { type Edit, LONGEST_PHOTO, MOST_PHOTOS, MOST_PHOTOS_OF_WALL, type Photo, type Room } from '../../../shared-core/house/index.ts';
import { freeId } from '../../../shared-core/base/index.ts';
import { say, spokenLanguage } from '../../../shared-core/words/index.ts';
import { sayFaults } from '../../parts/say-fault.ts';
import { LARGEST_PICTURE_FILE_BYTES, shrinkPicture } from '../../parts/shrink-picture.ts';
import type { HouseState } from '../../state/house.svelte.ts';

const LIMITS = { longestSidePixels: 1_280, longestText: LONGEST_PHOTO };
/** Three bytes are four characters of a data URL. */
const KEPT_KILOBYTES = (LONGEST_PHOTO * 3) / 4 / 1_000;

export const PHOTO_LIMITS = say`Each is kept at most ${LIMITS.longestSidePixels.toLocaleString(spokenLanguage().code)} pixels long and ${KEPT_KILOBYTES} kB, without the place it was taken at; ${MOST_PHOTOS_OF_WALL} of a wall, ${MOST_PHOTOS} of a house.`;

/** The photos of one wall, and those that are being made small for it. */
export class WallPhotos {
  readonly #house: HouseState;
  readonly #roomId: string;
  readonly wallId: string;
  /** How far those that are being added have come; null while none is. */
  progress = $state.raw<{ readonly done: number; readonly of: number } | null>(null);
  /** What was left out of those that were added last, and why. */
  troubles = $state.raw<readonly string[]>([]);
  /** What became of those that were added last. */
  said = $state('');
  readonly #waiting: File[] = [];
  #isStopped = false;

  constructor(house: HouseState, roomId: string, wallId: string) {
    this.#house = house;
    this.#roomId = roomId;
    this.wallId = wallId;
  }

  get photos(): readonly Photo[] {
    return this.#house.saved.photos.filter(({ room, wall }) => room === this.#roomId && wall === this.wallId);
  }

  /** How many more the wall takes. */
  get #left(): number {
    return Math.min(MOST_PHOTOS_OF_WALL - this.photos.length, MOST_PHOTOS - this.#house.saved.photos.length);
  }

  get room(): Room | null {
    return this.#house.saved.rooms.find(({ id }) => id === this.#roomId) ?? null;
  }

  addressOf(photo: Photo): string | null {
    return this.#house.photoImages.addressOf(photo);
  }

  /** What a photo shows, as far as anybody said: 'Photo 2 of wall B, Bed 1'. */
  nameOf(photo: Photo): string {
    return photo.caption ?? say`Photo ${this.photos.indexOf(photo) + 1} of wall ${this.wallId}, ${this.room?.name ?? this.#roomId}`;
  }

  /** Makes pictures small and adds those that can be shown, all as one edit; says of each other one why it was left out. */
  async add(files: readonly File[]): Promise<void> {
    if (files.length === 0) return;
    this.#waiting.push(...files);
    if (this.progress) {
      this.progress = { ...this.progress, of: this.progress.of + files.length };
      return;
    }
    this.progress = { done: 0, of: files.length };
    this.said = '';
    this.troubles = [];
    this.#isStopped = false;
    const images: string[] = [];
    const troubles: string[] = [];
    const tooMany: File[] = [];
    for (let file = this.#waiting.shift(); file; file = this.#waiting.shift()) {
      if (images.length >= this.#left) tooMany.push(file);
      else {
        const shrunk = await shrinkPicture(file, LIMITS);
        if ('image' in shrunk) images.push(shrunk.image);
        else troubles.push(shrunk.trouble);
      }
      if (this.#isStopped) break;
      this.progress = { ...this.progress, done: this.progress.done + 1 };
    }
    this.#waiting.length = 0;
    this.progress = null;
    if (this.#isStopped) {
      this.said = `${say`Stopped.`} ${say`No photo was added.`}`;
      return;
    }
    if (troubles.length > 0) troubles.push(say`Photos are JPEG, PNG or WebP files of at most ${LARGEST_PICTURE_FILE_BYTES / 1_000_000} MB.`);
    if (tooMany.length > 0) troubles.push(this.#sayTooMany(tooMany));
    const refused = images.length > 0 ? await this.#addImages(images) : null;
    this.troubles = refused === null ? troubles : [refused, ...troubles];
    if (refused === null) this.said = sayAdded(images.length);
  }

  /** Gives up those that are being added. */
  stop(): void {
    this.#isStopped = true;
  }

  setCaption = (photo: Photo, typed: string): Promise<string | null> => this.#edit({ kind: 'change-photo', photo: photo.id, facts: { caption: typed.trim() || null } });

  move = (photo: Photo, wall: string): Promise<string | null> => this.#edit({ kind: 'change-photo', photo: photo.id, facts: { wall } });

  remove = (photo: Photo): Promise<string | null> => this.#edit({ kind: 'remove-photo', photo: photo.id });

  #addImages(images: readonly string[]): Promise<string | null> {
    const taken = this.#house.saved.photos.map(({ id }) => id);
    const photos = images.map((image) => {
      const id = freeId('photo', taken);
      taken.push(id);
      return { id, room: this.#roomId, wall: this.wallId, image };
    });
    return this.#edit({ kind: 'add-photos', photos });
  }

  #sayTooMany([first, ...more]: readonly File[]): string {
    const which = more.length === 0 ? say`${first!.name} was left out` : say`${first!.name} and ${more.length} more were left out`;
    const isHouseFull = this.#house.saved.photos.length + this.#left >= MOST_PHOTOS;
    return `${which}: ${isHouseFull ? say`a house takes ${MOST_PHOTOS} photos.` : say`a wall takes ${MOST_PHOTOS_OF_WALL} photos.`}`;
  }

  async #edit(edit: Edit): Promise<string | null> {
    return sayFaults(await this.#house.edit(edit));
  }
}

function sayAdded(count: number): string {
  if (count === 0) return say`No photo was added.`;
  return count === 1 ? say`1 photo added.` : say`${count} photos added.`;
}
