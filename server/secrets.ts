// Everything that must not be guessed: room codes, seeds, seat secrets and tickets, and how a secret is stored.
import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import type { Entropy } from './ports.ts';
import { CODE_ALPHABET, CODE_LENGTH, tidied } from './room-code.ts';

export const systemEntropy: Entropy = { bytes: (count) => randomBytes(count) };

/** 256 bits as 64 hexadecimal digits (rule D4). */
export function newSeed(entropy: Entropy): string {
  return Buffer.from(entropy.bytes(32)).toString('hex');
}

/** 256 bits in 43 characters that need no escaping: a seat's secret or a ticket. */
export function newSecret(entropy: Entropy): string {
  return Buffer.from(entropy.bytes(32)).toString('base64url');
}

export function newCode(entropy: Entropy): string {
  return drawnCode(entropy, CODE_LENGTH);
}

/** Short enough to be typed at a computer on a wall; it opens one big screen, for a while, and tries are counted. */
const SCREEN_CODE_LENGTH = 6;

export function newScreenCode(entropy: Entropy): string {
  return drawnCode(entropy, SCREEN_CODE_LENGTH);
}

/** The code that a person meant, whatever its case and spacing; null where it cannot be one. */
export function parseScreenCode(text: string): string | null {
  const code = tidied(text);
  return code.length === SCREEN_CODE_LENGTH ? code : null;
}

function drawnCode(entropy: Entropy, length: number): string {
  // Bytes past the last whole multiple are dropped, or the front of the alphabet would be likelier.
  const limit = 256 - (256 % CODE_ALPHABET.length);
  let code = '';
  while (code.length < length) {
    for (const byte of entropy.bytes(length)) {
      if (byte < limit && code.length < length) code += CODE_ALPHABET[byte % CODE_ALPHABET.length];
    }
  }
  return code;
}

/** What is stored of a seat's secret: SHA-256 in hexadecimal digits. The secret has 256 bits, so it needs no salt. */
export function hashSecret(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}

/** Compares two hashes in a time that tells nothing about where they differ. */
export function isSameHash(a: string, b: string): boolean {
  const [left, right] = [Buffer.from(a, 'hex'), Buffer.from(b, 'hex')];
  return left.length === right.length && timingSafeEqual(left, right);
}

/** Of this process alone: codes are few enough to be tried one by one, so a tag without a key would give them away. */
const tagKey = randomBytes(32);

/** Stands for a room in the log without being its code: a code in a log would let its readers in. */
export function logTag(code: string): string {
  return createHmac('sha256', tagKey).update(`room/${code}`).digest('hex').slice(0, 10);
}
