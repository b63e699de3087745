// Guided deals: equal choices give equal rounds, and the class continues from the choice its teacher picked.
import { describe, expect, test } from 'vitest';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { type GuidedStart, playGuidedDeal } from '../../shared-engine/drill/guided.ts';
import { prepareDeal } from '../../shared-engine/drill/prepare.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { replay } from '../../shared-engine/rules/exchange/evolve.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { drillOf, sampledDeal } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';

const drill = drillOf([{ ...sampledDeal({ pairs: { from: 1 } }, 'guided'), seat: 2, dealer: 2 }]);
const prepared = prepareDeal(drill, drill.deals[0]!, houseKernel);
if (!prepared.ok) throw new Error(prepared.problem.message);
const start: GuidedStart = { deal: prepared.deal, seat: 2, bots: drill.bots, terms: STANDARD_TERMS.class };

function roundAfter(choices: readonly AnswerChoice[]): Round {
  const played = playGuidedDeal(start, choices, houseKernel);
  if (!played.ok) throw new Error(played.message);
  return played.round;
}

/** The choices of this style, up to the close of the round. */
function wholeRound(style: 'strong' | 'random', name: string): AnswerChoice[] {
  const choices: AnswerChoice[] = [];
  for (let round = roundAfter([]); round.phase !== 'closed'; round = roundAfter(choices)) {
    const choice = chooseFor(
      style,
      seatView(round, 2),
      houseKernel,
      stream(name, `choice ${choices.length}`),
    );
    choices.push(choice!);
  }
  return choices;
}

const strong = wholeRound('strong', 'teacher');

describe('a guided deal', () => {
  test('waits at the first pass with the tiles of the deal, after three bots have submitted', () => {
    const round = roundAfter([]);
    expect(round.phase === 'passing' && round.submitted.map((pass) => pass !== null)).toEqual([
      true,
      true,
      false,
      true,
    ]);
    expect(seatView(round, 2).rack).toEqual(prepared.deal.prepared[2]);
  });

  test('waits for the seat again one step after each choice, until the round is closed', () => {
    for (let length = 1; length < strong.length; length++) {
      const { record, answer, stage } = seatView(roundAfter(strong.slice(0, length)), 2);
      expect(answer).toBeNull();
      expect(stage.phase).not.toBe('closed');
      expect(record.steps).toHaveLength(length);
      for (const step of record.steps) expect(step.by).toEqual(['bot', 'bot', 'player', 'bot']);
    }
    expect(roundAfter(strong).phase).toBe('closed');
  });

  test('E2 is a log that replays to the same round', () => {
    const played = playGuidedDeal(start, strong, houseKernel);
    expect(played.ok && replay(played.events)).toEqual(played.ok && played.round);
  });

  test('gives equal rounds for equal choices, however often it is played', () => {
    expect(roundAfter(strong)).toEqual(roundAfter([...strong]));
    expect(JSON.stringify(roundAfter(strong.slice(0, 3)))).toBe(
      JSON.stringify(roundAfter(strong.slice(0, 3))),
    );
  });

  test('that differs from another at a step is equal to it before that step', () => {
    const rest = wholeRound('random', 'player');
    const mine = seatView(roundAfter([...strong.slice(0, 2), rest[2]!]), 2).record;
    const teacher = seatView(roundAfter(strong.slice(0, 3)), 2).record;
    expect(mine.steps.slice(0, 2)).toEqual(teacher.steps.slice(0, 2));
    expect(mine.steps[2]).not.toEqual(teacher.steps[2]);
  });

  test('keeps 152 tiles and every rack its size, whatever is chosen', () => {
    for (const name of ['one', 'two', 'three']) {
      const { racks } = roundAfter(wholeRound('random', name));
      expect(racks.map(sizeOf)).toEqual([13, 13, 14, 13]);
      expect(racks.flatMap(facesOf)).toHaveLength(53);
    }
  });
});

describe('E1 a guided deal ends at an illegal choice with its rejection', () => {
  test.each<[string, AnswerChoice[], string]>([
    [
      'a joker',
      [{ kind: 'pass', step: 'first-right', tiles: ['joker', 'joker', 'joker'], blind: 0 }],
      'joker-in-pass',
    ],
    ['another step', [{ kind: 'vote', step: 'vote', go: true }], 'wrong-step'],
    ['after the close', [...strong, strong[0]!], 'round-closed'],
  ])('%s', (_, choices, code) => {
    expect(playGuidedDeal(start, choices, houseKernel)).toMatchObject({ ok: false, code });
  });
});
