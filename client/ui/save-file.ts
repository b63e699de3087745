// Files that leave the page and come back to it: the drill, and the tables of the report.

/** Hands a text, or its parts one after the other, over as a file of this name. */
export function saveFile(name: string, type: string, text: string | readonly string[]): void {
  const address = URL.createObjectURL(new Blob(typeof text === 'string' ? [text] : [...text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}

/** `Tuesday: pairs` → `tuesday-pairs`. */
export function fileName(title: string): string {
  const plain = title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return plain === '' ? 'drill' : plain;
}
