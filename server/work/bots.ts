// Bots in this process: a bot that fails or answers illegally costs nobody the round.
import { setImmediate } from 'node:timers/promises';
import {
  type AnswerChoice,
  bagOf,
  botStream,
  chooseFor,
  type Kernel,
  openStep,
  PASS_SIZE,
  passObjection,
  type Random,
  type SeatView,
  type StyleName,
} from '../../shared-engine/index.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Bots } from '../ports.ts';

/** How the engine's bots are called; a test puts a broken one in its place. */
export type Choose = (
  style: StyleName,
  view: SeatView,
  kernel: Kernel,
  random: Random,
) => AnswerChoice | null;

export function botsInProcess(log: Log, chooseWith: Choose = chooseFor): Bots {
  return {
    async choose({ style, view, card, seed }) {
      // Other rooms and sockets get their turn between two bots.
      await setImmediate();
      const simplest = simplestLegal(view);
      try {
        const random = botStream(seed, simplest.step, view.record.seat);
        const choice = chooseWith(style, view, card.kernel, random);
        if (choice !== null && isLegal(choice, simplest, view)) return choice;
        log.error({ style, step: simplest.step }, 'a bot answered illegally; the simplest choice stands in');
      } catch (error) {
        log.error(
          { style, step: simplest.step, ...errorFacts(error) },
          'a bot failed; the simplest choice stands in',
        );
      }
      return simplest;
    },
  };
}

/** What is always allowed: the first tiles of the rack without the jokers, a stop, no tile across. */
export function simplestLegal(view: SeatView): AnswerChoice {
  const step = openStep(view.stage);
  if (step === null) throw new Error('The round is closed; there is nothing to choose.');
  if (step === 'vote') return { kind: 'vote', step, go: false };
  if (step === 'courtesy-ask') return { kind: 'ask', step, count: 0 };
  const needed = view.stage.phase === 'giving' ? view.stage.counts[view.record.seat] : PASS_SIZE;
  const tiles = view.rack.filter((face) => face !== 'joker').slice(0, needed);
  return { kind: 'seal', step, tiles, blind: 0 };
}

/** Judged beside a choice that is known to be legal, so that step and number of tiles are at hand. */
export function isLegal(choice: AnswerChoice, simplest: AnswerChoice, view: SeatView): boolean {
  switch (choice.kind) {
    case 'vote':
      return simplest.kind === 'vote';
    case 'ask':
      return simplest.kind === 'ask' && [0, 1, 2, 3].includes(choice.count);
    case 'seal':
      return (
        simplest.kind === 'seal' &&
        simplest.step === choice.step &&
        passObjection(bagOf(view.rack), choice.step, simplest.tiles.length, choice.tiles, choice.blind) ===
          null
      );
  }
}
