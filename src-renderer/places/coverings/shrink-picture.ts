import { LONGEST_PICTURE } from '../../../shared-core/house/index.ts';

const LONGEST_SIDE_PIXELS = 640;
const QUALITIES = [0.85, 0.7, 0.55, 0.4, 0.25];
/** Larger files would take more memory than a window has. */
const LARGEST_FILE_BYTES = 60_000_000;

export type ShrunkPicture = { readonly image: string } | { readonly trouble: string };

/** A file's picture as a data URL that a house file takes: no larger than a wall on the screen shows, as JPEG. */
export async function shrinkPicture(file: File): Promise<ShrunkPicture> {
  const refused = (why: string) => ({ trouble: `${file.name} ${why}. Nothing was changed. Choose a photograph or a scan saved as JPEG, PNG or WebP.` });
  if (file.size > LARGEST_FILE_BYTES) return refused(`is larger than ${LARGEST_FILE_BYTES / 1_000_000} MB`);
  let bytes: ArrayBuffer;
  try {
    bytes = await file.arrayBuffer();
  } catch {
    return refused('can’t be read');
  }
  let bitmap: ImageBitmap;
  try {
    bitmap = await createImageBitmap(new Blob([bytes], { type: file.type }));
  } catch {
    return refused('is no picture that can be shown');
  }
  const image = toDataAddress(bitmap);
  bitmap.close();
  return image === null ? refused('can’t be made small enough') : { image };
}

function toDataAddress(bitmap: ImageBitmap): string | null {
  const scale = Math.min(1, LONGEST_SIDE_PIXELS / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * scale));
  canvas.height = Math.max(1, Math.round(bitmap.height * scale));
  const context = canvas.getContext('2d');
  if (!context) return null;
  // JPEG knows no transparency and would show it black.
  context.fillStyle = 'white';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  for (const quality of QUALITIES) {
    const image = canvas.toDataURL('image/jpeg', quality);
    if (image.length <= LONGEST_PICTURE) return image;
  }
  return null;
}
