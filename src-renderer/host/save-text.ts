/** Hands a text to the user as a file to keep, by the browser's own way of saving. */
export function saveText(fileName: string, text: string, type = 'application/json'): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 1_000);
}
