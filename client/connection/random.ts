// Random numbers from the browser, as hexadecimal digits.

export function randomHex(bytes: number): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(bytes)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
}

/** An id that no other page makes. */
export const newId = () => randomHex(12);
