// The simulation behind `bench -- wakes`: who hears how many wake-ups does not depend on the machine.
import { expect, test } from 'vitest';
import { hearWakes } from '../bench/scale/simulated-wakes.ts';

const EVENING = { servers: 8, tables: 2000, seconds: 5, seed: 'wakes' } as const;
/** Of a tenth of a row a second at each table. */
const ROWS = 200;

test('every server hears of every row stored, and the same evening comes to the same', () => {
  const heard = hearWakes({ ...EVENING, together: true });
  // A table that stored twice before the next message is told once.
  expect(heard.wakes).toBeLessThanOrEqual(ROWS);
  expect(heard.wakes).toBeGreaterThan(0.99 * ROWS);
  expect(heard.messages).toBeLessThan(heard.wakes);
  const unpaused = hearWakes({ ...EVENING, together: true, pauseMs: 0 });
  expect(unpaused.wakes).toBe(ROWS);
  expect(unpaused.messages).toBeGreaterThan(0.8 * ROWS);
  // At 25 rows a second a server seldom has two to tell after a pause of 20 ms; at 200 it has four.
  expect(heard.messages).toBeLessThan(0.95 * unpaused.messages);
  expect(hearWakes({ ...EVENING, servers: 1, together: true }).messages).toBeLessThan(0.3 * ROWS);
  expect(hearWakes({ ...EVENING, together: true })).toEqual(heard);
});

test('a table kept together is loaded nowhere again, and one with its seats at any of eight servers at two others', () => {
  expect(hearWakes({ ...EVENING, together: true }).loads).toBe(0);
  // Of eight servers four seats are at 8 × (1 − (7/8)⁴) = 3.31 on average.
  const loadsOfARow = (8 * hearWakes({ ...EVENING, together: false }).loads) / ROWS;
  expect(loadsOfARow).toBeGreaterThan(2.1);
  expect(loadsOfARow).toBeLessThan(2.5);
});

test('what gathers until the next message goes into that, a hundred wake-ups at most, and a full one is followed at once', () => {
  const busy = { ...EVENING, servers: 1, tables: 200_000, seconds: 1, together: true } as const;
  const { messages, wakes } = hearWakes(busy);
  // Twenty rows a millisecond; a table that stored twice meanwhile is told once.
  expect(messages).toBeGreaterThan(190);
  expect(messages).toBeLessThan(280);
  expect(wakes).toBeGreaterThan(19_000);
  expect(wakes).toBeLessThanOrEqual(20_000);
});
