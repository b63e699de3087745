// Two tables that differ by one tile differ in the play as much as their chances say.
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { loadSimd } from '../../../shared-engine/kernels/simd/module.ts';
import { stream } from '../../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { gamesOn, type Table, withTileChanged } from '../../../shared-engine/tools/win-model/games.ts';
import { progressBar } from '../../../shared-engine/tools/win-model/progress-bar.ts';
import { chancesOn } from '../analysis/table-chances.ts';
import type { Proof, Size } from '../proof.ts';
import { NORMAL_POINT } from '../statistics/wilson.ts';

const TABLES: Readonly<Record<Size, number>> = { small: 30, full: 6000 };
const PLAYS: Readonly<Record<Size, number>> = { small: 2, full: 3 };
/** Of so many changes, drawn at random, the one is played that should matter most: the others say little. */
const CHANGES = 6;
const BAR = [0.85, 1.15] as const;

export const proof: Proof = {
  summary: 'A tile changed for one of the wall changes the play by as much as the chances say.',
  async run({ seed, size }) {
    const games = gamesOn(houseCard(), await loadSimd());
    const chancesAt = chancesOn(houseCard());
    const show = size === 'full' ? progressBar('tables', TABLES[size]) : () => {};
    const predicted: number[] = [];
    const played: number[] = [];
    for (let n = 0; n < TABLES[size]; n++) {
      const name = `local ${seed} ${n}`;
      const table = games.tableOf(name);
      const seat = SEATS[n % 4]!;
      const before = chancesAt(table)[seat]!;
      const random = stream(name, 'changes');
      let [changed, by] = [table as Table, 0];
      for (let change = 0; change < CHANGES; change++) {
        const other = withTileChanged(table, seat, random);
        const difference = chancesAt(other)[seat]! - before;
        if (Math.abs(difference) > Math.abs(by)) [changed, by] = [other, difference];
      }
      const [one, another] = [table, changed].map(
        (each) =>
          games.played(each, name, PLAYS[size]).results.filter(({ winner }) => winner === seat).length,
      );
      predicted.push(by);
      played.push((another! - one!) / PLAYS[size]);
      show(n + 1);
    }
    const { slope, halfWidth } = slopeThroughZero(predicted, played);
    const [from, to] = [slope - halfWidth, slope + halfWidth];
    const [low, high] = BAR;
    const small = size === 'small';
    const mean = predicted.reduce((sum, by) => sum + Math.abs(by), 0) / predicted.length;
    return [
      {
        what: `slope of the played on the predicted difference, ${predicted.length} pairs that differ by ${(mean * 100).toFixed(1)} wins in 100 games on average (95 %: ${from.toFixed(3)}–${to.toFixed(3)})`,
        value: Math.round(slope * 1000) / 1000,
        bar: small ? `interval reaches into ${low}–${high}` : `interval inside ${low}–${high}`,
        ok: small ? from <= high && to >= low : from >= low && to <= high,
      },
    ];
  },
};

/** Least squares without a constant; the error holds where the spread differs from pair to pair (White 1980). */
function slopeThroughZero(x: readonly number[], y: readonly number[]) {
  const squares = x.reduce((sum, value) => sum + value * value, 0);
  const slope = x.reduce((sum, value, n) => sum + value * y[n]!, 0) / squares;
  const spread = x.reduce((sum, value, n) => sum + (value * (y[n]! - slope * value)) ** 2, 0);
  return { slope, halfWidth: (NORMAL_POINT['95'] * Math.sqrt(spread)) / squares };
}
