// Base64 decoded without the help of page or server.

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** The bytes of a base64 text (RFC 4648, section 4); the text is our own and taken as well-formed. */
export function decodeBase64(text: string): Uint8Array {
  const digits = text.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((digits.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const digit of digits) {
    held = ((held << 6) | DIGITS.indexOf(digit)) & 0xffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = held >>> bits;
  }
  return bytes;
}
