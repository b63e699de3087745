// Dates of the calendar as text; apart from what is dealt on them, because the front page reads addresses with them.

/** Null for anything that is no date of the calendar, written as in `2026-11-26`. */
export function readDate(text: string): string | null {
  const match = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
  if (!match) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (year < 2000 || month < 1 || month > 12 || day < 1) return null;
  return day <= daysIn(year, month) ? text : null;
}

/** Days since the first of March of the year 0, by the Gregorian calendar. */
export function dayNumber(date: string): number {
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number);
  const fromMarch = (month + 9) % 12;
  const shifted = year - Math.floor(fromMarch / 10);
  const leapDays = Math.floor(shifted / 4) - Math.floor(shifted / 100) + Math.floor(shifted / 400);
  return 365 * shifted + leapDays + Math.floor((fromMarch * 306 + 5) / 10) + day - 1;
}

function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
