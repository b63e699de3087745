// Days of the calendar as texts like `2026-11-26`, by the clock of the device.

/** The day at this place in time, in milliseconds since 1970. */
export function dateAt(time: number): string {
  const day = new Date(time);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** Noon of a day, so that no change of clocks leads to another one. */
export function noonOf(date: string): Date {
  const [year = 2000, month = 1, day = 1] = date.split('-').map(Number);
  return new Date(year, month - 1, day, 12);
}

/** `count` days back from this one, the day before it first. */
export function daysBefore(date: string, count: number): readonly string[] {
  return Array.from({ length: count }, (_, back) => {
    const day = noonOf(date);
    day.setDate(day.getDate() - back - 1);
    return dateAt(day.getTime());
  });
}
