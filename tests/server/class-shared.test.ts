// What a class shares: one review for equal records, one deeper look for equal questions, called off with its last asker.
import { expect, test } from 'vitest';
import { sharedJudges } from '../../server/class/shared-judges.ts';
import { sharedReviewer } from '../../server/class/shared-reviews.ts';
import type { ChoiceToJudge, Judged } from '../../server/ports.ts';
import { playingCard } from '../../server/work/cards.ts';
import { reviewRound, type SeatRecord } from '../../shared-engine/index.ts';
import { classOf } from '../kit/classes.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const card = playingCard({ kind: 'house' });
const DRILL = drillOf([dealOf({ kind: 'random', seed: seedNamed('shared') })]);
const [one, two] = classOf(DRILL, ['strong', 'random']).map(({ record }) => record) as [
  SeatRecord,
  SeatRecord,
];
const JUDGED: Judged = { judgement: { depth: 'quick', verdict: 'not-looked-at' }, lowered: false };

test('equal records are reviewed once, others each', async () => {
  const asked: SeatRecord[] = [];
  const reviewer = sharedReviewer({
    async review(record) {
      asked.push(record);
      return reviewRound(record, houseKernel);
    },
  });
  const [first, again, other] = await Promise.all(
    [one, structuredClone(one), two].map((record) => reviewer.review(record, card)),
  );
  expect(again).toBe(first);
  expect(other).not.toEqual(first);
  expect(asked).toEqual([one, two]);
});

test('a review that failed is made anew for the next who asks', async () => {
  let tries = 0;
  const reviewer = sharedReviewer({
    async review(record) {
      if (++tries === 1) throw new Error('the worker is gone');
      return reviewRound(record, houseKernel);
    },
  });
  await expect(reviewer.review(one, card)).rejects.toThrow('the worker is gone');
  expect(await reviewer.review(one, card)).toEqual(reviewRound(one, houseKernel));
});

/** Judges in the hands of the test: each look is answered when the test says so. */
function judgesByHand() {
  const looks: { answer: (judged: Judged | null) => void; calledOff: number; gaveWay: number }[] = [];
  const judges = sharedJudges({
    judge() {
      const look = { answer: (_: Judged | null) => {}, calledOff: 0, gaveWay: 0 };
      const result = new Promise<Judged | null>((resolve) => {
        look.answer = resolve;
      });
      looks.push(look);
      return {
        result,
        giveWay: () => void look.gaveWay++,
        callOff: () => {
          look.calledOff++;
          look.answer(null);
        },
      };
    },
  });
  return { judges, looks };
}

const asked = (record: SeatRecord, nth = 0): ChoiceToJudge => ({ record, nth, card });

test('an equal question is looked at once, while the steps behind it differ, and is known from then on', async () => {
  const { judges, looks } = judgesByHand();
  const shorter = { ...one, steps: one.steps.slice(0, 1) };
  const all = [asked(one), asked(shorter), asked(two), asked(one, 1)].map((choice) => judges.judge(choice));
  expect(looks).toHaveLength(3);
  expect(judges.known(asked(one))).toBeNull();
  looks[0]!.answer(JUDGED);
  expect(await all[1]!.result).toBe(JUDGED);
  expect(judges.known(asked(shorter))).toBe(JUDGED);
});

test('a look gives way and is called off when everybody who asked has done so, and once', async () => {
  const { judges, looks } = judgesByHand();
  const [first, second] = [judges.judge(asked(one)), judges.judge(asked(one))];
  first.giveWay();
  first.giveWay();
  expect(looks[0]!.gaveWay).toBe(0);
  second.callOff();
  second.callOff();
  expect([looks[0]!.gaveWay, looks[0]!.calledOff]).toEqual([1, 0]);
  first.callOff();
  expect(looks[0]!.calledOff).toBe(1);
  judges.judge(asked(one));
  expect(looks).toHaveLength(2);
});
