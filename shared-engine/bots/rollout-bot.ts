// Chooses by playing what could be chosen on to the close, in worlds that the seat cannot rule out.
import { offeredChoice } from '../analysis/belief/situation.ts';
import {
  type Alternative,
  asks,
  blindNumbers,
  passesOf,
  votes,
} from '../analysis/comparison/alternatives.ts';
import type { Analyst } from '../analysis/comparison/analyze.ts';
import { createDealSource } from '../analysis/comparison/sampled-deals.ts';
import { screen } from '../analysis/comparison/screen.ts';
import { type RolloutStyle, STYLE_DATA, type StyleName } from '../policy/styles.ts';
import type { AnswerChoice } from '../rules/exchange/command.ts';
import type { PendingDecision } from '../rules/exchange/pending-decision.ts';
import { PASS_SIZE } from '../rules/exchange/schedule.ts';
import { sortFaces } from '../rules/tiles/bag.ts';
import { FACES } from '../rules/tiles/face.ts';
import type { SeatRecord } from '../rules/view/record.ts';

/** The worlds of one choice are drawn from one of so many seeds. */
export const ROLLOUT_SEEDS = 0x8000_0000;

/** Whether a style takes its time: its choices are work for another thread than the one that serves tables. */
export function usesRollouts(style: StyleName): boolean {
  return STYLE_DATA[style].kind === 'playing-on';
}

/** The same record, analyst and seed (a whole number below `PLAYING_ON_SEEDS`) give the same choice, however long it takes. */
export function chooseByRollouts(
  decision: PendingDecision,
  record: SeatRecord,
  { leaf, belief, rollouts }: Analyst,
  style: RolloutStyle,
  seed: number,
): AnswerChoice {
  // The answer is a stand-in: the situation is what was known before it.
  const { situation } = offeredChoice(record, answerWith(decision, { tiles: [], number: 0 }), 'bot');
  const alternatives = alternativesOf();
  const [first] = alternatives;
  if (!first) throw new RangeError('There is nothing to choose from.');
  if (alternatives.length === 1) return answerWith(decision, first);
  const source = createDealSource(belief, rollouts, situation, seed);
  const { finalists } = screen(source, situation.seat, alternatives, first, { ...style, interimAnalyses: [] });
  return answerWith(decision, finalists[0]!);

  function alternativesOf(): readonly Alternative[] {
    switch (decision.kind) {
      case 'vote':
        return votes();
      case 'ask':
        return asks();
      case 'pass': {
        const known = passesOf(situation, decision.count, leaf).slice(0, style.candidates - PASS_SIZE);
        return decision.blindAllowed ? [...known, ...blindNumbers(situation, leaf).slice(1)] : known;
      }
    }
  }
}

function answerWith(decision: PendingDecision, chosen: Pick<Alternative, 'tiles' | 'number'>): AnswerChoice {
  switch (decision.kind) {
    case 'vote':
      return { kind: 'vote', step: 'vote', go: chosen.number === 1 };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: chosen.number ?? 0 };
    case 'pass': {
      const { step, count, blindAllowed } = decision;
      const tiles = sortFaces(chosen.tiles.map((face) => FACES[face]!));
      return { kind: 'pass', step, tiles, blind: blindAllowed ? count - tiles.length : 0 };
    }
  }
}
