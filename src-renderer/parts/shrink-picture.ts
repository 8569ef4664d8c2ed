import { say } from '../../shared-core/words/index.ts';

/** What a picture is made small enough for. */
export interface PictureLimits {
  readonly longestSidePixels: number;
  /** Of the picture as a data URL. */
  readonly longestText: number;
}

export type ShrunkPicture = { readonly image: string } | { readonly trouble: string };

export const PICTURES_TAKEN = say`Choose a photograph or a scan saved as JPEG, PNG or WebP.`;

/** Larger files would take more memory than a window has. */
export const LARGEST_PICTURE_FILE_BYTES = 60_000_000;

/** Tried one after the other until the picture is small enough: a fairly sharp one first, a smaller one before a smeared one. */
const TRIES = [1, 0.75, 0.5].flatMap((part) => [0.85, 0.7, 0.55, 0.4].map((quality) => ({ part, quality })));

/**
 * A file's picture as a data URL that a house file takes, as JPEG, or a sentence that names the file and what is wrong.
 *
 * It is turned upright as the camera held it and drawn anew, so that nothing else in the file comes along, such as
 * where it was taken.
 */
export async function shrinkPicture(file: File, limits: PictureLimits): Promise<ShrunkPicture> {
  if (file.size > LARGEST_PICTURE_FILE_BYTES) return { trouble: say`${file.name} is larger than ${LARGEST_PICTURE_FILE_BYTES / 1_000_000} MB.` };
  let bytes: ArrayBuffer;
  try {
    bytes = await file.arrayBuffer();
  } catch {
    return { trouble: say`${file.name} can’t be read.` };
  }
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(new Blob([bytes], { type: file.type }), { imageOrientation: 'from-image' });
  } catch {
    return { trouble: say`${file.name} is no picture that can be shown.` };
  }
  const image = toDataAddress(bitmap, limits);
  bitmap.close();
  return image === null ? { trouble: say`${file.name} can’t be made small enough.` } : { image };
}

function toDataAddress(bitmap: ImageBitmap, { longestSidePixels, longestText }: PictureLimits): string | null {
  const canvas = document.createElement('canvas');
  let drawn = 0;
  for (const { part, quality } of TRIES) {
    if (drawn !== part && !draw(bitmap, canvas, Math.min(1, (part * longestSidePixels) / Math.max(bitmap.width, bitmap.height)))) return null;
    drawn = part;
    const image = canvas.toDataURL('image/jpeg', quality);
    if (image.length <= longestText) return image;
  }
  return null;
}

function draw(bitmap: ImageBitmap, canvas: HTMLCanvasElement, scale: number): boolean {
  canvas.width = Math.max(1, Math.round(bitmap.width * scale));
  canvas.height = Math.max(1, Math.round(bitmap.height * scale));
  const context = canvas.getContext('2d');
  if (!context) return false;
  // JPEG knows no transparency and would show it black.
  context.fillStyle = 'white';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  return true;
}
