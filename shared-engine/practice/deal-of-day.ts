// The deal of a day: one deal for everybody, from a seed that anybody can work out from the date.
import type { RandomDeal, Seat } from '../rules/index.ts';
import { dayNumber } from './date.ts';
import { textHash } from './stored-round.ts';

/** Everybody sits here; who is East goes round from day to day. */
export const DAY_SEAT = 0;

/** `date` as in `2026-11-26`; the same date gives the same deal everywhere and for good. */
export function dealOfDay(date: string): RandomDeal {
  const seed = textHash(`deal of the day ${date}`);
  return { seed, dealer: dealerOn(date) };
}

const SEATS_BY_DAY: readonly Seat[] = [0, 1, 2, 3];

function dealerOn(date: string): Seat {
  const day = dayNumber(date);
  return SEATS_BY_DAY[((day % 4) + 4) % 4] ?? 0;
}
