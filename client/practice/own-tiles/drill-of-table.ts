// The rack from the table and what came to it, as a drill of one deal for a class to practice on (rule R6).
import {
  type AnswerChoice,
  type Drill,
  type DrillDeal,
  type Face,
  type Four,
  forFour,
  type LaidExchange,
  neighbor,
  SEATS,
  type Step,
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

/** The same with each choice made at the table as the teacher's own, so that words can be written to it (rule T2). */
export function lessonOfTable(own: OwnTable, exchange: LaidExchange, seed: string): Drill {
  const { deals, ...drill } = drillOfTable(own, exchange, seed);
  const comments = Object.fromEntries(
    own.entries.flatMap((entry): [Step, { chosen: Chosen }][] => {
      const chosen = entry.kind === 'choice' ? chosenIn(entry.choice) : null;
      return entry.kind === 'choice' && chosen !== null ? [[entry.choice.step, { chosen }]] : [];
    }),
  );
  return { ...drill, deals: deals.map((deal) => ({ ...deal, comments })) };
}

type Chosen = readonly Face[] | number;

/** As a comment writes a choice; null for a pass of blind tiles alone, which cannot be written. */
function chosenIn(choice: AnswerChoice): Chosen | null {
  switch (choice.kind) {
    case 'pass':
      return choice.tiles.length > 0 ? choice.tiles : null;
    case 'vote':
      return choice.go ? 1 : 0;
    case 'ask':
      return choice.count;
  }
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
