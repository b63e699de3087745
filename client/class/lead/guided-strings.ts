// What the dashboard says about a guided deal, and whom it waits for.
import type {
  AnswerChoice,
  Dashboard,
  DashboardPlayer,
  GuidedDeal,
  Step,
} from '../../../shared-engine/index.ts';
import { playerCount, stepTitle } from '../model/strings.ts';

export const GUIDED = {
  title: 'Guided deal',
  about:
    'Everybody continues from the choice you pick here, with the same tiles. Each player’s own choice is kept for that player’s review.',
  closed: 'This deal is finished for everybody.',
  waitFor: (step: Step, names: string) => `${stepTitle(step)}: waiting for ${names}.`,
  held: (step: Step) => `${stepTitle(step)}: you have stopped the tables here. Press “Continue” first.`,
  nobody: 'No player is here yet.',
  botsForAway: 'Let bots choose for players who are away',
  advanceFrom: (step: Step) => `${stepTitle(step)}: continue from…`,
  other: 'A pass you pick yourself',
  pick: 'Tap the tiles to pass. Tap a tile again to put it back.',
  blind: 'Tiles passed blind',
  nothing: 'There is no tile to pass here.',
  advance: 'Continue from this choice',
  anonymity:
    'To keep choices anonymous, none is shown below six players, nor one that fewer than three made.',
} as const;

/** Why a pass of the teacher's own cannot be made: it has too few tiles or too many. */
export function countMessage(needed: number, picked: number): string {
  const difference = Math.abs(needed - picked);
  const change = picked < needed ? 'more' : 'fewer';
  return `Choose ${difference} ${change} ${difference === 1 ? 'tile' : 'tiles'}.`;
}

/** Who made a choice: `2 players`, or a bot where no player did. */
export function madeBy(players: number): string {
  return players === 0 ? 'a bot' : playerCount(players);
}

/** The players whom a guided deal waits for. */
export function stillToChoose({
  players,
  dealt,
  guidedDeal,
}: Pick<Dashboard, 'players' | 'dealt' | 'guidedDeal'>): DashboardPlayer[] {
  return players.filter(
    ({ deal, at, submitted }) => deal !== dealt || (at === guidedDeal?.step && !submitted),
  );
}

/** A number as a choice; at the vote 1 continues and 0 stops. */
export function numberChoice(step: GuidedDeal['step'], number: number): AnswerChoice {
  return step === 'vote'
    ? { kind: 'vote', step, go: number === 1 }
    : { kind: 'ask', step: 'courtesy-ask', count: number };
}
