// What friends who play the same deal may know of each other: a choice, once they have made their own at that step.
import { type FriendChoice, type FriendChoices, type SeatStep, seatView } from '../../shared-engine/index.ts';
import type { ActiveClass } from './active-class.ts';
import { dealOf, roundOf } from './player-results.ts';
import { type ClassPlayer, playersIn } from './state.ts';

interface Played {
  readonly name: string;
  readonly seat: ClassPlayer['seat'];
  readonly start: readonly string[];
  readonly steps: readonly SeatStep[];
}

/**
 * Without its version. Built up from the steps that this player has come past, at which nothing can be taken back any
 * more: of the others it holds what they chose there and whether they held the same tiles, nothing else (rule SD1).
 */
export function friendChoicesFor(live: ActiveClass, player: ClassPlayer): Omit<FriendChoices, 'version'> {
  const own = playedBy(live, player);
  const others = playersIn(live.state).filter(({ id }) => id !== player.id);
  const played = others.flatMap((one) => playedBy(live, one) ?? []);
  const steps = (own?.steps ?? []).map((step, place) => ({
    step: nameOf(step),
    own: choiceIn(step, player.seat),
    others: played.flatMap((one) => {
      const at = one.steps.findIndex((other) => nameOf(other) === nameOf(step));
      const theirs = one.steps[at];
      if (own === null || theirs === undefined) return [];
      const sameTiles = heldBefore(own, place) === heldBefore(one, at);
      return [{ name: one.name, sameTiles, choice: choiceIn(theirs, one.seat) }];
    }),
  }));
  return { friends: others.map(({ name }) => name), steps };
}

function playedBy(live: ActiveClass, player: ClassPlayer): Played | null {
  const round = roundOf(live, player, Math.max(player.first, dealOf(live, player)));
  if (round === null) return null;
  const { start, steps } = seatView(round, player.seat).record;
  return { name: player.name, seat: player.seat, start, steps };
}

function nameOf(step: SeatStep): FriendChoices['steps'][number]['step'] {
  if (step.kind === 'move') return step.step;
  return step.kind === 'vote' ? 'vote' : 'courtesy-ask';
}

function choiceIn(step: SeatStep, seat: ClassPlayer['seat']): FriendChoice {
  switch (step.kind) {
    case 'move':
      return { kind: 'pass', tiles: [...step.gave], blind: step.blind[seat] };
    case 'vote':
      return { kind: 'vote', go: step.go[seat] };
    case 'ask':
      return { kind: 'ask', count: step.asked[seat] };
  }
}

/** The tiles on the rack before this step, as a text that is the same for the same tiles. */
function heldBefore({ start, steps }: Played, place: number): string {
  const held = [...start];
  for (const step of steps.slice(0, place)) {
    if (step.kind !== 'move') continue;
    for (const face of step.gave) held.splice(held.indexOf(face), 1);
    held.push(...step.received);
  }
  return held.sort().join(' ');
}
