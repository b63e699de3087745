// The rack from the table and what came to it, as a drill of one deal for a class to practice on (rule R6).
import {
  type Drill,
  type DrillDeal,
  type Face,
  type Four,
  forFour,
  type LaidExchange,
  neighbor,
  SEATS,
} from '../../../shared-engine/index.ts';
import type { OwnTable } from './own-table.ts';
import { OWN_SEAT, OWN_TILES } from './strings.ts';

/** The seed deals what is left of the other racks and decides what their bots draw. */
export function drillOfTable({ table, tiles }: OwnTable, { steps }: LaidExchange, seed: string): Drill {
  const racks: Four<readonly Face[]> = forFour((seat) => (seat === OWN_SEAT ? tiles : []));
  const { secondCharleston, blindPasses, courtesy, cardHelp, passLog } = table.terms;
  const scripted = steps.length > 0 ? scriptOf(steps) : null;
  return {
    format: 'quadrille-drill/1',
    title: OWN_TILES.drillTitle,
    form: 'alone',
    ways: { secondCharleston, blindPasses, courtesy, cardHelp, passLog },
    bots: { styles: ['typical', 'typical', 'typical'], seed },
    deals: [
      {
        id: 'deal-1',
        seat: OWN_SEAT,
        dealer: table.dealer,
        tiles: { kind: 'manual', racks, seed },
        ...(scripted && { scripted }),
      },
    ],
  };
}

/** What the others did at the table, as far as it was laid in. */
function scriptOf(steps: LaidExchange['steps']): NonNullable<DrillDeal['scripted']> {
  const arrivals: Partial<Record<string, readonly Face[]>> = {};
  let votes = {};
  let asks = {};
  for (const step of steps) {
    if (step.kind === 'vote') {
      votes = { stopped: SEATS.filter((seat) => seat !== OWN_SEAT && !step.go[seat]) };
    } else if (step.kind === 'ask') {
      asks = { asked: step.asked[neighbor(OWN_SEAT, 'across')] };
    } else if (step.received.length > 0) {
      arrivals[step.step] = step.received;
    }
  }
  return { arrivals, ...votes, ...asks };
}
