// Frames that no page would send: damaged, deeply nested, or aimed at the prototype of objects.
import { readFrame } from '../../../server/ws/frame.ts';
import type { Random } from '../../../shared-engine/rules/deal/random.ts';

const VALID = [
  '{"kind":"hello","id":"a","versions":[1,1],"ticket":"t"}',
  '{"kind":"action","id":"b","action":{"kind":"ready","ready":true}}',
  '{"kind":"choose","id":"c","round":1,"seat":0,"choice":{"kind":"vote","step":"vote","disconnect":true}}',
];

const ODD: readonly ((random: Random) => string)[] = [
  (random) => '['.repeat(1 + random.below(4000)),
  (random) => `${'{"a":'.repeat(1 + random.below(600))}1`,
  (random) => `${'['.repeat(7 + random.below(900))}${']'.repeat(7)}`,
  () => '{"__proto__":{"kind":"hello"},"kind":"action","id":"d","action":{"kind":"leave"}}',
  () => '{"kind":"__proto__","id":"e"}',
  () => '{"constructor":{"prototype":{"polluted":true}},"kind":"action"}',
  (random) => `{"kind":"choose","id":"f","round":${'9'.repeat(1 + random.below(400))},"seat":0}`,
  () => '{"kind":"action","id":"g","action":{"kind":"unseat","seat":1e999}}',
  (random) => `"${'\\u0000'.repeat(random.below(600))}"`,
  () => '',
  () => 'null',
];

/** A frame of at most 4 KiB. */
export function malformedFrame(random: Random): Uint8Array {
  const kind = random.below(3);
  if (kind === 0) return Uint8Array.from({ length: random.below(300) }, () => random.below(256));
  if (kind === 1) return new TextEncoder().encode(ODD[random.below(ODD.length)]!(random)).slice(0, 4096);
  const bytes = new TextEncoder().encode(VALID[random.below(VALID.length)]!);
  for (let hits = 1 + random.below(4); hits > 0; hits--)
    bytes[random.below(bytes.length)] = random.below(256);
  return bytes.slice(0, 1 + random.below(bytes.length));
}

/** Parses `count` malformed frames; answers what went wrong. */
export function readMalformedFrames(count: number, random: Random): string[] {
  const violations: string[] = [];
  const before = JSON.stringify(Object.getOwnPropertyNames(Object.prototype));
  for (let at = 0; at < count && violations.length < 5; at++) {
    const frame = malformedFrame(random);
    try {
      const read = readFrame(frame);
      if (read.ok && typeof read.message.kind !== 'string') violations.push(`frame ${at} became no message`);
    } catch (error) {
      violations.push(`frame ${at} threw ${error instanceof Error ? error.name : typeof error}`);
    }
  }
  const after = JSON.stringify(Object.getOwnPropertyNames(Object.prototype));
  return before === after ? violations : [...violations, 'the prototype of all objects has changed'];
}
