/** Hands bytes or a text to the user as a file to keep, by the browser's own way of saving. */
export function saveFile(fileName: string, content: Uint8Array | string, type: string): void {
  const address = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 1_000);
}
