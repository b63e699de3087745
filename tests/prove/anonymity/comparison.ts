// What two evenings of a class told their teachers, compared byte by byte, and the numbers of players in it.
import { dashboardSchema } from '../../../shared-engine/protocol/class.ts';
import { drillReportSchema } from '../../../shared-engine/protocol/class-report.ts';
import type { Fetched } from './evening.ts';

/** Where two evenings differ first; null where every byte is equal. */
export function firstDifference(one: readonly Fetched[], other: readonly Fetched[]): string | null {
  if (one.length !== other.length) return `${one.length} and ${other.length} moments`;
  for (const [moment, fetched] of one.entries()) {
    for (const [from, text] of Object.entries(fetched)) {
      const changed = other[moment]![from]!;
      if (changed === text) continue;
      const at = [...text].findIndex((letter, place) => letter !== changed[place]);
      return `moment ${moment}, ${from}: ${text.slice(Math.max(0, at - 40), at + 40)}`;
    }
  }
  return null;
}

/** Of every deal, what the report tells of each step. */
export function stepsIn({ report }: Fetched) {
  const { deals } = drillReportSchema.parse(JSON.parse(report!));
  return deals.flatMap(({ deal, steps }) => steps.map((spread) => ({ deal, spread })));
}

/** What was fetched before the second deal was dealt. */
export function ofFirstDeal(fetched: readonly Fetched[]): Fetched[] {
  return fetched.filter(({ dashboard }) => dashboardSchema.parse(JSON.parse(dashboard!)).dealt < 2);
}

/** Every number of players that any report told. */
export function countsIn(fetched: readonly Fetched[]): number[] {
  return fetched.flatMap((one) =>
    stepsIn(one).flatMap(({ spread }) => [
      ...spread.choices.map(({ count }) => count),
      ...(spread.hidden === undefined ? [] : [spread.hidden]),
      ...spread.aims.map(({ count }) => count),
    ]),
  );
}
