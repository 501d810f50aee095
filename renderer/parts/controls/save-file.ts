/** Hands a file to the browser's own way of saving. */
export function saveFile(file: { readonly fileName: string; readonly mediaType: string; readonly text: string }): void {
  const address = URL.createObjectURL(new Blob([file.text], { type: file.mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = file.fileName;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser may read the address only after this turn.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
