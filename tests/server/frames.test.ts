// The parser of frames against anything a stranger may send.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readFrame } from '../../server/ws/frame.ts';
import { TokenBucket } from '../../server/ws/token-bucket.ts';
import { FACES } from '../../shared-engine/rules/tiles/face.ts';
import { FakeClock } from '../kit/clock.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

describe('a frame', () => {
  test('of any bytes is a message or a rejection, never a crash', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (data) => {
        expect(readFrame(data)).toMatchObject({ ok: false });
      }),
      { numRuns: 2000 },
    );
  });

  test('of any JSON is a message or a rejection, and leaves prototypes alone', () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 8 }), (text) => {
        readFrame(bytes(text));
        readFrame(bytes(`{"kind":"action","id":"i","action":${text}}`));
        readFrame(
          bytes(`{"kind":"choose","id":"i","round":1,"seat":0,"choice":${text},"__proto__":${text}}`),
        );
        expect(Object.keys(Object.prototype)).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });

  test('deeper than any message is not looked into, not even for its id', () => {
    const nested = (levels: number) =>
      `{"kind":"action","id":"i","action":${'['.repeat(levels)}${']'.repeat(levels)}}`;
    expect(readFrame(bytes(nested(5)))).toEqual({ ok: false, id: 'i' });
    expect(readFrame(bytes(nested(6)))).toEqual({ ok: false, id: null });
    expect(readFrame(bytes(nested(1500)))).toEqual({ ok: false, id: null });
  });

  test('that is right comes through as it was sent', () => {
    const choice = fc.record({
      kind: fc.constant('pass'),
      step: fc.constantFrom('first-right', 'second-left', 'courtesy-pass'),
      tiles: fc.array(fc.constantFrom(...FACES), { maxLength: 14 }),
      blind: fc.integer({ min: -5, max: 5 }),
    });
    const message = fc.record({
      kind: fc.constant('choose'),
      id: fc.string({ minLength: 1, maxLength: 36 }),
      round: fc.integer({ min: 1, max: 999 }),
      seat: fc.constantFrom(0, 1, 2, 3),
      choice,
    });
    fc.assert(
      fc.property(message, (sent) => {
        expect(readFrame(bytes(JSON.stringify(sent)))).toEqual({ ok: true, message: sent });
      }),
    );
  });
});

describe('a token bucket', () => {
  test('gives so many at once and so many a second, and never holds more', () => {
    const clock = new FakeClock();
    const bucket = new TokenBucket(clock, { perSecond: 20, burst: 40 });
    const taken = (attempts: number) =>
      Array.from({ length: attempts }, () => bucket.take()).filter(Boolean).length;
    expect(taken(100)).toBe(40);
    clock.advance(1000);
    expect(taken(100)).toBe(20);
    clock.advance(49);
    expect(taken(1)).toBe(0);
    clock.advance(1);
    expect(taken(1)).toBe(1);
    clock.advance(3_600_000);
    expect(taken(100)).toBe(40);
  });
});
