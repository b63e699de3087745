// The simulation behind `bench -- wakes`: who hears how many wake-ups does not depend on the machine.
import { expect, test } from 'vitest';
import { hearWakes } from '../bench/scale/simulated-wakes.ts';

const EVENING = { servers: 8, tables: 2000, seconds: 5, seed: 'wakes' } as const;
/** Of a tenth of a row a second at each table. */
const ROWS = 200;

test('every server hears of every row stored, and the same evening comes to the same', () => {
  const heard = hearWakes({ ...EVENING, together: true });
  expect(heard.wakes).toBe(ROWS);
  expect(heard.messages).toBeLessThanOrEqual(heard.wakes);
  expect(heard.messages).toBeGreaterThan(0.8 * ROWS);
  expect(hearWakes({ ...EVENING, together: true })).toEqual(heard);
});

test('a table kept together is loaded nowhere again, and one with its seats at any of eight servers at two others', () => {
  expect(hearWakes({ ...EVENING, together: true }).loads).toBe(0);
  // Of eight servers four seats are at 8 × (1 − (7/8)⁴) = 3.31 on average.
  const loadsOfARow = (8 * hearWakes({ ...EVENING, together: false }).loads) / ROWS;
  expect(loadsOfARow).toBeGreaterThan(2.1);
  expect(loadsOfARow).toBeLessThan(2.5);
});

test('what gathers while a message is under way goes into the next, a hundred wake-ups at most', () => {
  const busy = { ...EVENING, servers: 1, tables: 200_000, seconds: 1, together: true } as const;
  const { messages, wakes } = hearWakes(busy);
  // Twenty rows a millisecond; a table that stored twice meanwhile is told once.
  expect(messages).toBeLessThan(1100);
  expect(wakes).toBeGreaterThan(19_000);
  expect(wakes).toBeLessThanOrEqual(20_000);
});
