// A class report as files: JSON, and one CSV table each for the choices, the aims and the mistakes.
import { type MeasuredValue, thousandth, tileList } from '../../analysis/index.ts';
import type { ClassReport } from './class-report.ts';
import { type Cell, csvText } from './csv.ts';
import type { SpreadChoice, StepSpread } from './spread.ts';

export function reportJson(report: ClassReport): string {
  return `${JSON.stringify(report, null, 2)}\n`;
}

/** One row for each choice of each step, and one for the hidden choices. */
export function choicesCsv({ deal, steps }: ClassReport): string {
  const head = ['deal', 'seat', 'step', 'kind', 'choice', 'players', 'share', ...WINS];
  const rows = steps.flatMap((spread) => [
    ...spread.choices.map((choice): Cell[] => [
      deal,
      spread.seat,
      spread.step,
      spread.kind,
      choiceText(spread, choice),
      choice.count,
      shareOf(choice.share),
      ...ends(choice.winsLost),
      choice.costly,
    ]),
    ...hiddenRows(deal, spread),
  ]);
  return csvText([head, ...rows]);
}

/** One row that makes the players add up. */
function hiddenRows(deal: string, { seat, step, kind, players, hidden = 0 }: StepSpread): Cell[][] {
  if (hidden === 0) return [];
  const nothing = WINS.map(() => null);
  return [[deal, seat, step, kind, 'hidden', hidden, shareOf(hidden / players), ...nothing]];
}

/** One row for each section that players aimed at, by step. */
export function aimsCsv({ deal, steps, sections }: ClassReport): string {
  // A step with a blind number has two spreads with the same aims.
  const asked = steps.filter(({ kind }) => kind !== 'blind');
  const rows = asked.flatMap(({ seat, step, aims }) =>
    aims.map(({ section, count, share }): Cell[] => [
      deal,
      seat,
      step,
      sections[section] ?? section,
      count,
      shareOf(share),
    ]),
  );
  return csvText([['deal', 'seat', 'step', 'aim', 'players', 'share'], ...rows]);
}

/** One row for each kind of mistake, the costliest first. */
export function mistakesCsv({ deal, mistakes }: ClassReport): string {
  const head = ['deal', 'kind of mistake', 'choices', 'players', 'wins lost in total'];
  const rows = mistakes.map(({ label, choices, players, totalWinsLost }): Cell[] => [
    deal,
    label,
    choices,
    players,
    totalWinsLost,
  ]);
  return csvText([head, ...rows]);
}

const WINS = ['wins lost in 100 games', 'wins lost from', 'wins lost to', 'clearly worse'];

function ends(points: MeasuredValue | null): Cell[] {
  if (points === null) return [null, null, null];
  const { value, halfWidth } = points;
  return [value, thousandth(value - halfWidth), thousandth(value + halfWidth)];
}

function shareOf(share: number): number {
  return Math.round(share * 10_000) / 10_000;
}

function choiceText({ kind }: StepSpread, { chosen }: SpreadChoice): string {
  if (typeof chosen !== 'number') return chosen.length === 0 ? 'three tiles blind' : tileList(chosen);
  switch (kind) {
    case 'vote':
      return chosen === 1 ? 'continue' : 'stop';
    case 'ask':
      return `ask for ${chosen}`;
    default:
      return `${chosen} blind`;
  }
}
