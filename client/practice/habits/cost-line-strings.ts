// What the page says of what choices cost and luck brought over time.
import { LEAST_CASES, type LedgerLine, type LedgerMeans } from '../../../shared-engine/index.ts';
import { withInterval } from '../../ui/numbers.ts';

export const COST_LINE = {
  title: 'Choices and luck over time',
  about: 'Wins in 100 games, a round, against our steady player. Each point is several rounds in a row.',
  cost: 'Cost of your choices',
  luck: 'What luck brought',
  rounds: 'Rounds',
  earlier: 'first rounds',
  latest: 'latest rounds',
  numbers: 'The numbers',
} as const;

/** What choices cost and luck brought a round, over all rounds; or that there are too few to say. */
export function costWords({ all }: LedgerLine): string {
  const rounds = all?.rounds ?? 0;
  if (all === null || rounds < LEAST_CASES) {
    return `${rounds === 0 ? 'No round has' : rounds === 1 ? 'One round has' : `Only ${rounds} rounds have`} been worked out so far. ${LEAST_CASES} are a start.`;
  }
  const { cost } = all;
  return `Over ${rounds} rounds, your choices cost about ${wins(cost.value)} wins in 100 games a round (between ${wins(cost.value - cost.halfWidth)} and ${wins(cost.value + cost.halfWidth)}). Luck ${luckWords(all)}.`;
}

function luckWords({ luck: { value, halfWidth } }: LedgerMeans): string {
  const about = Math.abs(value).toFixed(1);
  const between = `(between ${wins(value - halfWidth)} and ${wins(value + halfWidth)})`;
  if (about === '0.0') return `evened out ${between}`;
  return `${value > 0 ? 'brought' : 'took'} about ${about} ${between}`;
}

/** Rounds that are not in the line; null where all are. */
export function leftOutWords({ missing, helped }: LedgerLine): string | null {
  const parts = [
    ...(missing > 0 ? [`${roundsWords(missing)} not worked out yet`] : []),
    ...(helped > 0 ? [`${roundsWords(helped)} left out because the coach helped`] : []),
  ];
  return parts.length > 0 ? `${parts.join('. ')}.` : null;
}

function roundsWords(count: number): string {
  return count === 1 ? 'One round is' : `${count} rounds are`;
}

/** For those who do not see the line. */
export function lineDescription({ points }: LedgerLine): string {
  const list = (of: 'cost' | 'luck') => points.map((point) => wins(point[of].value)).join(', ');
  return `From your first rounds to the latest. ${COST_LINE.cost}: ${list('cost')}. ${COST_LINE.luck}: ${list('luck')}.`;
}

export function meansWords({ value, halfWidth }: LedgerMeans['cost']): string {
  return withInterval(value, halfWidth, false);
}

function wins(value: number): string {
  const text = value.toFixed(1);
  return text === '-0.0' ? '0.0' : text.replace('-', '−');
}
