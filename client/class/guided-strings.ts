// What the desk, the wall and a player are told where the class plays one line.
import {
  type AnswerChoice,
  type Dashboard,
  type DashboardPlayer,
  type GuidedDeal,
  ownStep,
  type SeatStep,
  type SeatView,
} from '../../shared-engine/index.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { tileCount, tileList } from '../tiles/tile-names.ts';

export const LINE = {
  title: 'The line of play',
  about:
    'All go on from the choice you pick here, with the same tiles again. What each player chose is kept, and judged in that player’s review.',
  closed: 'This deal is closed for everybody.',
  waitFor: (step: string, names: string) => `${step}: ${names} still to choose.`,
  held: (step: string) => `${step}: you hold the tables here. Let them go on first.`,
  nobody: 'Nobody is here to choose yet.',
  botsForAway: 'Let bots choose for those who are away',
  goOnFrom: (step: string) => `${step}: the class goes on from…`,
  another: 'A pass of your own choice',
  pick: 'Tap the tiles to pass; tap one again to put it back.',
  count: (needed: number, picked: number, blind: boolean) =>
    `A pass takes ${tileCount(needed)} here${blind ? ', those passed on unseen counted in' : ''}; you have picked ${picked}.`,
  unseen: 'Arriving tiles passed on unseen',
  nothing: 'The class has nothing to give here.',
  goOn: 'Go on from this',
  kept: 'A choice that one player alone made is not shown, so that nobody is told from the others.',
  wentOn: 'The class went on from',
} as const;

/** `2 players`, or who made it where no player did. */
export function madeBy(players: number): string {
  if (players === 0) return 'a bot in a player’s place';
  return players === 1 ? '1 player' : `${players} players`;
}

/** Whom the line waits for. */
export function stillToChoose({
  players,
  dealt,
  guidedDeal,
}: Pick<Dashboard, 'players' | 'dealt' | 'line'>): DashboardPlayer[] {
  return players.filter(
    ({ deal, at, submitted }) => deal !== dealt || (at === guidedDeal?.step && !submitted),
  );
}

/** A number as a choice: 1 and 0 for going on and stopping. */
export function numbered(step: GuidedDeal['step'], number: number): AnswerChoice {
  return step === 'vote'
    ? { kind: 'vote', step, go: number === 1 }
    : { kind: 'ask', step: 'courtesy-ask', count: number };
}

/** What a player of such a class is told above the table; null as long as there is nothing to tell. */
export function lineNews({ record, stage }: SeatView, held: boolean): string | null {
  const { steps, own = [], seat } = record;
  if (stage.phase === 'closed') {
    return 'The class played one line. This review judges what you chose yourself, each time by the tiles you then held.';
  }
  if (steps.length > own.length) {
    // A class that has ended leads nobody on; the table then goes on by itself.
    return held
      ? 'You have chosen. When all have, your teacher says from which choice the class goes on.'
      : null;
  }
  const last = own.length - 1;
  const line = steps[last];
  if (line === undefined) return null;
  const mine = ownStep(record, last);
  if (mine === null) return 'You came in where the class is now.';
  const [from, yours] = [chosenIn(line, seat), chosenIn(mine, seat)];
  if (from === yours) return `The class went on from what you chose too: ${from}.`;
  return `The class went on from ${from}. You chose ${yours}; that is kept, and your review judges it.`;
}

/** What this seat chose at a step, in words that stand in the middle of a sentence. */
function chosenIn(step: SeatStep, seat: SeatView['record']['seat']): string {
  switch (step.kind) {
    case 'vote':
      return step.go[seat] ? 'going on' : 'stopping';
    case 'ask':
      return `asking for ${step.asked[seat]}`;
    case 'move': {
      const unseen = step.blind[seat] > 0 ? `${step.blind[seat]} passed on unseen` : '';
      const tiles = step.gave.length > 0 ? tileList(step.gave) : '';
      const said = [tiles, unseen].filter(Boolean).join(' and ');
      return said === '' ? `nothing to give at ${STEP_NAMES[step.step].toLowerCase()}` : said;
    }
  }
}
