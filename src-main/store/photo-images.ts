import { createHash } from 'node:crypto';
import type { Transaction } from 'kysely';
import { bad, type Fault, good, type Outcome } from '../../shared-core/base/index.ts';
import { type House, isKept, type Photo } from '../../shared-core/house/index.ts';
import { say } from '../../shared-core/words/index.ts';
import type { Tables } from './tables.ts';

/**
 * Puts the images of photos aside, each once, and gives the house with what stands for them.
 *
 * So an edit neither reads nor writes nor sends any photo but those that it adds. Photos that `before` has are as they
 * were; any other that comes without its image is a fault where the file does not keep that.
 */
export async function keepPhotoImages(transaction: Transaction<Tables>, house: House, before: readonly Photo[]): Promise<Outcome<House>> {
  const had = new Set(before);
  const faults: Fault[] = [];
  const photos: Photo[] = [];
  for (const [index, photo] of house.photos.entries()) {
    if (had.has(photo)) photos.push(photo);
    else if (!isKept(photo.image)) photos.push({ ...photo, image: await keep(transaction, photo.image) });
    else if ((await findPhotoImage(transaction, photo.image)) !== null) photos.push(photo);
    else faults.push({ path: `photos[${index}].image`, message: say`stands for a photo that this house file does not keep; it takes the photo itself, as a data URL` });
  }
  return faults.length > 0 ? bad(faults) : good({ ...house, photos });
}

/** The house with every photo in it, as the exchange document has it. */
export async function withPhotoImages(transaction: Transaction<Tables>, house: House): Promise<Outcome<House>> {
  const faults: Fault[] = [];
  const photos: Photo[] = [];
  for (const [index, photo] of house.photos.entries()) {
    const image = await findPhotoImage(transaction, photo.image);
    if (image === null) faults.push({ path: `photos[${index}].image`, message: say`is missing from the house file, or damaged in it` });
    else photos.push({ ...photo, image });
  }
  return faults.length > 0 ? bad(faults) : good({ ...house, photos });
}

/** The image of that name; null where the file keeps none, and where what it keeps is no longer what was put there. */
export async function findPhotoImage(transaction: Transaction<Tables>, id: string): Promise<string | null> {
  const row = await transaction.selectFrom('photo_image').select('image').where('id', '=', id).executeTakeFirst();
  return row && nameOf(row.image) === id ? row.image : null;
}

/** Drops what neither the house nor any edit that can be undone or made again points at. */
export async function dropLostPhotoImages(transaction: Transaction<Tables>): Promise<void> {
  await transaction
    .deleteFrom('photo_image')
    .where(({ not, exists, selectFrom }) => not(exists(selectFrom('photo').select('photo.id').where(({ eb, fn, ref }) => eb(fn<number>('instr', [ref('photo.facts'), ref('photo_image.id')]), '>', 0)))))
    .where(({ not, exists, selectFrom }) => not(exists(selectFrom('edit').select('edit.number').where(({ eb, fn, ref }) => eb(fn<number>('instr', [ref('edit.changes'), ref('photo_image.id')]), '>', 0)))))
    .execute();
}

async function keep(transaction: Transaction<Tables>, image: string): Promise<string> {
  const id = nameOf(image);
  await transaction.insertInto('photo_image').values({ id, image }).onConflict((conflict) => conflict.column('id').doUpdateSet({ image })).execute();
  return id;
}

function nameOf(image: string): string {
  return `kept:${createHash('sha256').update(image).digest('hex')}`;
}
