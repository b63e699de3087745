// The drill parser against arbitrary input: it never throws, rejects with messages, and what it accepts can be dealt.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readDrillFile } from '../../shared-engine/drill/file.ts';
import type { Drill } from '../../shared-engine/drill/format.ts';
import { parseDrill } from '../../shared-engine/drill/parse.ts';
import { prepareDeal } from '../../shared-engine/drill/prepare.ts';
import { DRILL_PROBLEM_CODES } from '../../shared-engine/drill/problem.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { addTo, bagOf, EMPTY_BAG, FULL_SET, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES } from '../../shared-engine/rules/tiles/face.ts';
import { dealOf, drillOf, sampledDeal } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const whole = drillOf([
  dealOf({ kind: 'random', seed: seedNamed('fuzz') }, { title: 'By chance' }),
  dealOf(
    { kind: 'manual', racks: [['bam-1', 'bam-1'], [], ['joker'], []], seed: seedNamed('fuzz') },
    { id: 'second' },
  ),
  { ...sampledDeal({ pairs: { from: 1 }, jokers: 1 }), id: 'third' },
]);

function holds(parsed: ReturnType<typeof parseDrill>): void {
  if (parsed.ok) {
    expectDealt(parsed.drill);
    return;
  }
  expect(parsed.problems.length).toBeGreaterThan(0);
  for (const { code, message } of parsed.problems) {
    expect(DRILL_PROBLEM_CODES).toContain(code);
    expect(message).toMatch(/^(Drill|Deal \d+( \(.+\))?): .+\.$/s);
  }
}

function expectDealt(drill: Drill): void {
  for (const deal of drill.deals) {
    const prepared = prepareDeal(drill, deal, houseKernel);
    if (!prepared.ok) {
      expect(prepared.problem.code).toBe('too-rare');
      continue;
    }
    const { racks, wall } = dealTiles(prepared.deal);
    for (const seat of SEATS) expect(sizeOf(racks[seat])).toBe(seat === deal.dealer ? 14 : 13);
    expect(addTo(addTo(EMPTY_BAG, prepared.deal.prepared.flat()), wall)).toEqual(FULL_SET);
  }
}

test('the parser of drills takes any value without throwing', () => {
  fc.assert(
    fc.property(fc.oneof(fc.anything(), fc.jsonValue({ maxDepth: 9 })), (json) =>
      holds(parseDrill(json, houseKernel)),
    ),
    { seed: 1, numRuns: 3_000 },
  );
});

test('the reader of drill files takes any text without throwing', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
      const read = readDrillFile(text, houseKernel);
      holds(read.ok ? { ok: true, drill: read.file.drill } : read);
    }),
    { seed: 2, numRuns: 2_000 },
  );
});

const VALUES = ['p', 'joker', 'bam-1', 0, 14, 10, -1, 1e9, '__proto__', [], {}, null] as const;

/** A drill in which one value somewhere inside is changed or renamed. */
const damaged = fc
  .record({
    steps: fc.array(fc.nat(), { minLength: 1, maxLength: 6 }),
    value: fc.oneof(fc.jsonValue(), fc.constantFrom<unknown[]>(...VALUES)),
    rename: fc.option(fc.constantFrom('__proto__', 'constructor', 'toString', 'from', 'kind', 'x')),
  })
  .map(({ steps, value, rename }) => {
    const drill: unknown = JSON.parse(JSON.stringify(whole));
    let place: unknown = drill;
    for (const [depth, step] of steps.entries()) {
      if (typeof place !== 'object' || place === null) break;
      const entries: [string, unknown][] = Object.entries(place);
      const entry = entries[step % Math.max(1, entries.length)];
      if (entry === undefined) break;
      const [key, inner] = entry;
      if (depth === steps.length - 1 || typeof inner !== 'object') {
        const changed = { value, enumerable: true, configurable: true, writable: true };
        Object.defineProperty(place, rename ?? key, changed);
        break;
      }
      place = inner;
    }
    return drill;
  });

test('a drill that is damaged anywhere is accepted whole or rejected with messages', () => {
  fc.assert(
    fc.property(damaged, (json) => holds(parseDrill(json, houseKernel))),
    { seed: 3, numRuns: 600 },
  );
});

test('racks of any tiles are rejected, or dealt with every tile that was set', () => {
  const rack = fc.array(fc.constantFrom(...FACES), { maxLength: 9 });
  let dealt = 0;
  fc.assert(
    fc.property(fc.tuple(rack, rack, rack, rack), fc.constantFrom(...SEATS), (racks, dealer) => {
      const deal = dealOf({ kind: 'manual', racks, seed: seedNamed('any racks') }, { dealer });
      const parsed = parseDrill(drillOf([deal]), houseKernel);
      holds(parsed);
      if (!parsed.ok) return;
      dealt++;
      const prepared = prepareDeal(parsed.drill, deal, houseKernel);
      if (!prepared.ok) throw new Error(prepared.problem.message);
      for (const seat of SEATS) {
        const held = bagOf(prepared.deal.prepared[seat]);
        expect(bagOf(racks[seat]).every((count, face) => count <= held[face]!)).toBe(true);
      }
    }),
    { seed: 5, numRuns: 300 },
  );
  expect(dealt).toBeGreaterThan(100);
});

test('a drill file that is cut off anywhere is rejected', () => {
  const text = JSON.stringify(whole);
  for (let end = 0; end < text.length; end += 7) {
    expect(readDrillFile(text.slice(0, end), houseKernel)).toMatchObject({
      problems: [{ code: 'not-json' }],
    });
  }
});
