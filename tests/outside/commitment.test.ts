// The hash behind the commitment. Source: FIPS 180-2, appendix B.1–B.3, and the hash of the empty message (NIST).
import { createHash } from 'node:crypto';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';
import { expect, test } from 'vitest';
import { commitmentTo } from '../../shared-engine/rules/deal/commitment.ts';
import { seedNamed } from '../kit/rounds.ts';

test.each([
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
])('SHA-256 of "%s" is the published value', (message, published) => {
  expect(bytesToHex(sha256(utf8ToBytes(message)))).toBe(published);
});

test('D4 the commitment is the SHA-256 of the 32 seed bytes, by a second implementation (OpenSSL in Node)', () => {
  for (const name of ['one', 'two', 'three']) {
    const seed = seedNamed(name);
    expect(commitmentTo(seed)).toBe(createHash('sha256').update(hexToBytes(seed)).digest('hex'));
  }
});
