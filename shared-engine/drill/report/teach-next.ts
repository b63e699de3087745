// What a class should be taught next: its costliest kinds of mistake over all deals, with racks on which they were made.
import type { MistakeCategory } from '../../analysis/index.ts';
import { dealtSize, type Face, type Four, forFour, type Seat, type Step } from '../../rules/index.ts';
import { DRILL_FORMAT, DRILL_LIMITS, type Drill, type DrillDeal } from '../format.ts';
import type { ClassReport } from './class-report.ts';

/** How many kinds a plan has: more is no plan. */
const POINTS = 3;
/** Deals of the drill that is made of one kind. */
const MOST_DEALS = 6;

/** A rack that everybody held at a step, and a choice from it that was this kind of mistake. */
export interface MistakeExample {
  /** Id of the deal. */
  readonly deal: string;
  readonly step: Step;
  readonly rack: readonly Face[];
  readonly chosen: readonly Face[];
  readonly players: number;
  /** The best that was found there and why. */
  readonly better: readonly Face[];
  readonly why: string;
}

export interface TeachingPoint {
  readonly category: MistakeCategory;
  readonly label: string;
  readonly choices: number;
  readonly totalWinsLost: number;
  /** Those that most players made come first. */
  readonly examples: readonly MistakeExample[];
  /** Ids of the deals in which the mistake was made. */
  readonly deals: readonly string[];
}

/** Three kinds at most, the costliest first. Everything in it is in the report already. */
export function teachNext(deals: readonly ClassReport[]): readonly TeachingPoint[] {
  const points = new Map<MistakeCategory, TeachingPoint>();
  for (const { deal, mistakes } of deals) {
    for (const { category, label, choices, totalWinsLost } of mistakes) {
      const known = points.get(category);
      points.set(category, {
        category,
        label,
        choices: choices + (known?.choices ?? 0),
        totalWinsLost: totalWinsLost + (known?.totalWinsLost ?? 0),
        examples: [],
        deals: [...(known?.deals ?? []), deal],
      });
    }
  }
  return [...points.values()]
    .sort((a, b) => b.totalWinsLost - a.totalWinsLost)
    .slice(0, POINTS)
    .map((point) => ({ ...point, examples: examplesOf(point.category, deals) }));
}

function examplesOf(category: MistakeCategory, deals: readonly ClassReport[]): readonly MistakeExample[] {
  return deals
    .flatMap(({ deal, steps }) =>
      steps.flatMap(({ step, kind, rack, best, choices }) => {
        if (kind !== 'pass' || rack === null || best === null || typeof best.chosen === 'number') return [];
        const { chosen: better, why } = best;
        return choices.flatMap(({ chosen, count, mistakes }): MistakeExample[] => {
          if (typeof chosen === 'number' || !mistakes.includes(category)) return [];
          return [{ deal, step, rack, chosen, players: count, better, why }];
        });
      }),
    )
    .sort((a, b) => b.players - a.players);
}

/** Players sit here in a drill that is made; East is the same seat or the one to its right. */
const PLAYER: Seat = 0;
const OTHER_DEALER: Seat = 1;

/**
 * A drill of the racks on which a kind of mistake was made, each once; where none may be shown, of the deals in which it was
 * made, from the drill of the class. Null where there is neither.
 */
export function drillOfPoint(
  point: TeachingPoint,
  played: Drill | null,
  newSeed: () => string,
): Drill | null {
  const racks = new Map(point.examples.map((example) => [example.rack.join(), example]));
  const made = [...racks.values()].map((example): DrillDeal => {
    const { rack, step, why } = example;
    const isEast = rack.length === dealtSize(PLAYER, PLAYER);
    const all: Four<readonly Face[]> = forFour((seat) => (seat === PLAYER ? rack : []));
    return {
      id: 'made',
      title: titled(`${stepWords(step)}: what would you pass?`),
      note: `${point.label}. ${why}`.slice(0, DRILL_LIMITS.note),
      seat: PLAYER,
      dealer: isEast ? PLAYER : OTHER_DEALER,
      tiles: { kind: 'manual', racks: all, seed: newSeed() },
    };
  });
  const again = (played?.deals ?? []).filter(({ id }) => point.deals.includes(id));
  const deals = (made.length > 0 ? made : again)
    .slice(0, MOST_DEALS)
    .map((deal, nth) => ({ ...deal, id: `deal-${nth + 1}` }));
  if (deals.length === 0) return null;
  return {
    format: DRILL_FORMAT,
    title: titled(point.label),
    form: 'alone',
    ...(played?.ways && { ways: played.ways }),
    bots: { styles: played?.bots.styles ?? ['typical', 'typical', 'typical'], seed: newSeed() },
    deals,
  };
}

function titled(text: string): string {
  return text.slice(0, DRILL_LIMITS.title);
}

function stepWords(step: Step): string {
  const words = step.replaceAll('-', ' ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
