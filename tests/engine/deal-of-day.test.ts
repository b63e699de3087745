// The deal of the day: the same for everybody, from the date alone.
import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { readDate } from '../../shared-engine/practice/date.ts';
import { dealOfDay } from '../../shared-engine/practice/deal-of-day.ts';

test('the deal of a day follows from its date by a hash that anybody can work out', () => {
  const hash = createHash('sha256').update('deal of the day 2026-11-26').digest('hex');
  expect(dealOfDay('2026-11-26')).toEqual(dealOfDay('2026-11-26'));
  expect(dealOfDay('2026-11-26').seed).toBe(hash);
  expect(dealOfDay('2026-11-27').seed).not.toBe(hash);
});

test('East goes round from day to day, over leap days and the ends of years and centuries', () => {
  const first = Date.UTC(2096, 1, 1);
  const dates = Array.from({ length: 1900 }, (_, day) =>
    new Date(first + day * 86_400_000).toISOString().slice(0, 10),
  );
  expect(dates.map(readDate)).toEqual(dates);
  const dealers = dates.map((date) => dealOfDay(date).dealer);
  const start = dealers[0]!;
  expect(dealers).toEqual(dates.map((_, day) => (start + day) % 4));
});
