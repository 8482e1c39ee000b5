/** Gives the user a file as the browser does with a download. */
export function giveFile(name: string, contents: Uint8Array | string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([contents as BlobPart]));
  link.download = name;
  link.click();
  // The browser reads the blob after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
