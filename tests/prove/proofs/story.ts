// One state of a review tells one story: over many rounds and orders of arrival nothing said contradicts anything shown.
import { analyzeDecision, withDeepAnalysis } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import type { Review } from '../../../shared-engine/analysis/review/review.ts';
import { reviewRound } from '../../../shared-engine/analysis/review/review-round.ts';
import { shuffled, stream } from '../../../shared-engine/rules/deal/random.ts';
import { houseKernel, records } from '../../kit/reviews.ts';
import { contradictionsIn } from '../../kit/story-contradictions.ts';
import { GLANCE } from '../analysis/budgets.ts';
import { analyst } from '../analysis/choices.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const ROUNDS: Record<Size, number> = { small: 4, full: 2_000 };
/** Orders in which the same analyses arrive. */
const ORDERS = 6;
const MOST_WORDS = 25;

export const proof: Proof = {
  summary:
    'Headline, verdicts, sentences and chart rows never contradict each other, in any order of arrival.',
  async run({ seed, size }) {
    const counts = { states: 0, contradicting: 0, ends: 0, sameEnd: 0, told: 0, changed: 0 };
    const long: string[] = [];
    for (let n = 0; n < ROUNDS[size]; n += 4) {
      for (const record of records(`${seed} story ${n}`, 4)) {
        const first = reviewRound(record, houseKernel);
        const analyses = first.choices.map((_, nth) =>
          analyzeDecision(analyst, record, nth, { budget: GLANCE }),
        );
        const whole = analyses.reduce<Review>(
          (now, one, nth) => withDeepAnalysis(now, nth, one),
          first,
        ).story;
        const sentences = [...whole.headline, ...whole.choices.flatMap((choice) => choice.sentences)];
        long.push(...sentences.filter((sentence) => sentence.split(' ').length > MOST_WORDS));
        for (let order = 0; order < ORDERS; order++) {
          let now: Review = first;
          const random = stream(`${seed} order ${order}`, record.start.join());
          for (const nth of shuffled([...analyses.keys()], random)) {
            now = withDeepAnalysis(now, nth, analyses[nth]!);
            counts.states++;
            if (contradictionsIn(now).length > 0) counts.contradicting++;
            counts.told++;
            if (JSON.stringify(now.story.choices[nth]) !== JSON.stringify(whole.choices[nth]))
              counts.changed++;
          }
          counts.ends++;
          if (JSON.stringify(now.story) === JSON.stringify(whole)) counts.sameEnd++;
        }
      }
    }
    const row = (what: string, value: number, wanted: number): ProofRow => ({
      what,
      value,
      bar: String(wanted),
      ok: value === wanted && counts.states > 0,
    });
    return [
      row(
        `of ${counts.states} states of ${ROUNDS[size]} reviews, those that contradict themselves`,
        counts.contradicting,
        0,
      ),
      row(`of ${counts.told} deep answers, those told otherwise at the end`, counts.changed, 0),
      row(
        `ends that are the same whatever the order, ${ORDERS} orders a review`,
        counts.sameEnd,
        counts.ends,
      ),
      {
        what: `sentences of more than ${MOST_WORDS} words`,
        value: [long.length, ...long.slice(0, 3)].join(' '),
        bar: '0',
        ok: long.length === 0,
      },
    ];
  },
};
