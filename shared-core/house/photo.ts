import { z } from 'zod';
import { facts, id, takes, text } from './accepted.ts';
import { isRasterImage, MOST_PIXELS } from './raster-image.ts';
import { say } from '../words/index.ts';

/** A photo 1,280 px long is below it at a fair quality; as many as a house takes still fit into one document. */
export const LONGEST_PHOTO = 160_000;
export const MOST_PHOTOS = 80;
export const MOST_PHOTOS_OF_WALL = 12;

const KEPT_PATTERN = /^kept:[0-9a-f]{64}$/;

const imageTaken = takes(say`a photo as a data URL of image/png, image/jpeg or image/webp in base64, of at most ${LONGEST_PHOTO} characters and ${MOST_PIXELS} pixels each way`);

/** What stands for an image that a house file keeps beside its facts. */
export const keptImage = z.string().regex(KEPT_PATTERN, { error: say`is not what stands for a photo that a house file keeps` });

/**
 * Whether an image is not the photo itself but stands for one that a house file keeps.
 *
 * Example: of 'data:image/png;base64,iVBORw0KGgo=' it is false.
 */
export function isKept(image: string): boolean {
  return KEPT_PATTERN.test(image);
}

/** How a wall looks; only the exchange document and the edit that adds it hold the image itself. */
export const photo = facts(say`a photo`, {
  id: id(),
  room: id(),
  wall: id(),
  caption: text(say`what the photo shows`).optional(),
  image: z
    .string({ error: imageTaken })
    .max(LONGEST_PHOTO, { error: imageTaken, abort: true })
    .refine((image) => isRasterImage(image) || isKept(image), { error: imageTaken }),
});
