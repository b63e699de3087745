// Names, codes and secrets: what is taken, what is rejected, and that nothing crashes the parser.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseName } from '../../server/room/name.ts';
import { CODE_ALPHABET, CODE_LENGTH, parseCode } from '../../server/room-code.ts';
import {
  hashSecret,
  isSameHash,
  logTag,
  newCode,
  newSecret,
  newSeed,
  systemEntropy,
} from '../../server/secrets.ts';
import { seededEntropy } from '../kit/server.ts';

describe('a name', () => {
  const taken: readonly [string, string][] = [
    ['Ines', 'Ines'],
    ['  Wilma   the  second ', 'Wilma the second'],
    ['Zoe\u0308', 'Zo\u00EB'],
    ['x'.repeat(24), 'x'.repeat(24)],
    ['👩‍👩‍👧‍👦', '👩‍👩‍👧‍👦'],
    ['👩🏽‍🌾'.repeat(24), '👩🏽‍🌾'.repeat(24)],
    ['王さん', '王さん'],
  ];
  test.each(taken)('%j is taken as %j', (typed, name) => {
    expect(parseName(typed)).toBe(name);
  });

  const rejected = [
    '',
    '   ',
    'x'.repeat(25),
    'two\nlines',
    'bell\u0007',
    'turn\u202Earound',
    'mark\u200F',
    'isolate\u2066',
    '\u200B',
    '\u0301\u0301',
    'half\uD800',
    `e${'\u0301'.repeat(300)}`,
  ];
  test.each(rejected)('%j is rejected', (typed) => {
    expect(parseName(typed)).toBeNull();
  });

  test('once taken is taken again as it is, and is at most 24 characters to a reader', () => {
    const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (typed) => {
        const name = parseName(typed);
        if (name === null) return;
        expect(parseName(name)).toBe(name);
        expect(name).toBe(name.normalize('NFC'));
        expect([...graphemes.segment(name)].length).toBeLessThanOrEqual(24);
      }),
    );
  });
});

describe('a code', () => {
  test('has eight of 31 letters that are not mistaken for one another', () => {
    expect(CODE_ALPHABET).toHaveLength(31);
    expect(new Set(CODE_ALPHABET).size).toBe(31);
    for (const lookalike of 'ILO01') expect(CODE_ALPHABET).not.toContain(lookalike);
    expect(newCode(systemEntropy)).toHaveLength(CODE_LENGTH);
  });

  test('uses every letter about equally often, the front of the alphabet too', () => {
    const entropy = seededEntropy('codes');
    const counts = new Map<string, number>();
    const letters = 4000 * CODE_LENGTH;
    for (let n = 0; n < 4000; n++) {
      for (const letter of newCode(entropy)) counts.set(letter, (counts.get(letter) ?? 0) + 1);
    }
    const expected = letters / 31;
    const chiSquare = [...CODE_ALPHABET].reduce((sum, letter) => {
      return sum + ((counts.get(letter) ?? 0) - expected) ** 2 / expected;
    }, 0);
    // Printed tables of chi-square: 30 degrees of freedom, .001.
    expect(chiSquare).toBeLessThan(59.703);
  });

  test('is read whatever its case and spacing, and nothing else is', () => {
    expect(parseCode('abcd-2345')).toBe('ABCD2345');
    expect(parseCode(' ABCD 2345 ')).toBe('ABCD2345');
    for (const wrong of ['', 'ABCD234', 'ABCD23456', 'ABCD234O', 'ABCD234/', 'ABCD2345\u0000']) {
      expect(parseCode(wrong)).toBeNull();
    }
  });
});

describe('a secret', () => {
  test('is new every time and long enough; what is stored of it does not contain it', () => {
    const secrets = Array.from({ length: 100 }, () => newSecret(systemEntropy));
    expect(new Set(secrets).size).toBe(100);
    for (const secret of secrets) {
      expect(Buffer.from(secret, 'base64url')).toHaveLength(32);
      expect(isSameHash(hashSecret(secret), hashSecret(secret))).toBe(true);
      expect(isSameHash(hashSecret(secret), hashSecret(`${secret}x`))).toBe(false);
    }
    expect(newSeed(systemEntropy)).toMatch(/^[0-9a-f]{64}$/);
  });

  // FIPS 180-2 B.1: SHA-256 of "abc".
  test('is stored as its SHA-256', () => {
    expect(hashSecret('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    expect(isSameHash(hashSecret('abc'), 'ba78')).toBe(false);
  });

  test('of a room stands in the log under another name', () => {
    expect(logTag('ABCD2345')).toMatch(/^[0-9a-f]{10}$/);
    expect(logTag('ABCD2345')).toBe(logTag('ABCD2345'));
    expect(logTag('ABCD2345')).not.toBe(logTag('ABCD2346'));
    // Codes are few enough to be tried one by one: without a key of the process a tag would give them away.
    const tried = ['ABCD2345', 'room/ABCD2345'].map((text) => hashSecret(text).slice(0, 10));
    expect(tried).not.toContain(logTag('ABCD2345'));
  });
});
