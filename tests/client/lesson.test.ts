// The example of the help: its deal is what its sentences say, and every step of a round has something to say.
import { describe, expect, it } from 'vitest';
import { LESSON_DEAL, lessonSentences } from '../../client/lessons/lesson.ts';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { botRandom } from '../../shared-engine/bots/finish-round.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../shared-engine/rules/exchange/evolve.ts';
import type { Phase } from '../../shared-engine/rules/exchange/round.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { houseKernel } from '../kit/reviews.ts';
import { type Played, playOn } from '../kit/rounds.ts';

const names = ['Runa', 'Nuno', 'Orla', 'Dunja'].map(
  (name) => ({ kind: 'bot', name, style: 'typical' }) as const,
);

function sentencesAt({ round }: Played): readonly string[] {
  const view = seatView(round, LESSON_DEAL.seat);
  const table: Table = {
    code: 'An example',
    you: 0,
    seats: [names[0]!, names[1]!, names[2]!, names[3]!],
    mode: 'friends',
    terms: STANDARD_TERMS.friends,
    card: { id: 'house', name: 'House card' },
    round: 1,
    remaining: null,
    view,
  };
  const seated = { table, view, you: LESSON_DEAL.seat };
  return lessonSentences(round.phase === 'closed' ? { kind: 'closed', seated } : { kind: 'playing', seated });
}

function dealt(): Played {
  const round = begin(openRound(LESSON_DEAL.deal, { revealRacks: false }));
  return { round, log: [] };
}

describe('the example', () => {
  it('the example deals two pairs, a flower and a joker, and its first pass brings the west wind a partner', () => {
    const first = sentencesAt(dealt());
    expect(first[0]).toContain('a pair of 6 bam, a pair of 3 crak, the flower and the joker');
    const { round } = dealt();
    const giver = chooseFor(
      'typical',
      seatView(round, 3),
      houseKernel,
      botRandom(LESSON_DEAL.deal.seed, 'first-right', 3),
    );
    expect(giver).toMatchObject({ kind: 'pass', tiles: expect.arrayContaining(['west']) });
  });

  it('the example has something to say at every step, and no sentence twice in a row', () => {
    const met = new Set<Phase>();
    let before: readonly string[] = [];
    const random = stream('lesson', 'players');
    let played = dealt();
    for (;;) {
      const sentences = sentencesAt(played);
      met.add(played.round.phase);
      expect(sentences.length).toBeGreaterThan(0);
      expect(sentences).not.toEqual(before);
      if (played.round.phase === 'closed') break;
      before = sentences;
      const { phase, resolved } = played.round;
      played = playOn(
        played,
        random,
        (round) => round.resolved.length > resolved.length || round.phase !== phase,
      );
    }
    expect(met).toContain('voting');
  });
});
