// Ten racks, one question: what is asked again, what the answers come to, and what is said of them.
import { describe, expect, it } from 'vitest';
import { type AnsweredRack, type RacksModel, racksModel } from '../../client/practice/racks/model.ts';
import { costSentences, doneTitle, rackSummary } from '../../client/practice/racks/sum-strings.ts';
import { metCounts, passSum, sortedOut } from '../../client/practice/racks/summary.ts';
import { choiceVerdict } from '../../shared-engine/analysis/review/choice-verdict.ts';
import type { PassReview } from '../../shared-engine/analysis/review/review.ts';
import { type AskedRack, reviewAskedPass } from '../../shared-engine/practice/rack-question.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { houseKernel } from '../kit/reviews.ts';

function openModel(): RacksModel {
  const noDrawer = { next: async () => null, stop() {} };
  return racksModel({ kernel: houseKernel, newSeed: () => 'ten racks', openDrawer: () => noDrawer });
}

function asking(model: RacksModel) {
  const now = model.state.value;
  if (now.is !== 'asking') throw new Error(now.is);
  return now;
}

function done(model: RacksModel) {
  const now = model.state.value;
  if (now.is !== 'done') throw new Error(now.is);
  return now;
}

/** The first tiles that may be passed. */
const firstThree = ({ rack }: AskedRack): readonly Face[] =>
  rack.filter((face) => face !== 'joker').slice(0, 3);

/** Passes the first three tiles of each rack, and the best three of every third. */
function answerAll(model: RacksModel): void {
  for (let left = asking(model).of; left > 0; left--) {
    const { asked, nth } = asking(model);
    const first = firstThree(asked);
    model.pass(nth % 3 === 0 ? passOf(reviewAskedPass(asked, first, houseKernel)).best.tiles : first);
    model.next();
  }
}

function passOf({ choices }: ReturnType<typeof reviewAskedPass>): PassReview {
  const [choice] = choices;
  if (choice?.kind !== 'pass') throw new Error('no pass');
  return choice;
}

const passIn = ({ answer }: AnsweredRack): PassReview => {
  if (answer.kind !== 'pass') throw new Error(answer.kind);
  return passOf(answer.review);
};

const model = openModel();
model.start('pass', { fits: null });
answerAll(model);
const { answered } = done(model);

describe('ten racks that were answered', () => {
  it('are counted by the verdict that each got, and cost together what the best would have been closer', () => {
    const { counts, cost, racks } = passSum(answered);
    expect([answered.length, racks]).toEqual([10, 10]);
    for (const { verdict, count } of counts) {
      expect(count).toBe(answered.filter((rack) => choiceVerdict(passIn(rack)) === verdict).length);
    }
    expect(counts.reduce((sum, { count }) => sum + count, 0)).toBe(10);
    // In tenths, as each is shown: whoever adds them up comes to the same.
    const closer = answered
      .map(passIn)
      .map(({ best, played }) => Math.round(10 * (best.nearness - played.nearness)) / 10);
    expect(cost).toBeCloseTo(closer.reduce((sum, one) => sum + one, 0));
    expect(counts.find(({ verdict }) => verdict === 'best')?.count).toBeGreaterThanOrEqual(3);
  });

  it('are put in order of what they cost, where something better is told, and asked again', () => {
    const { again, rest } = sortedOut(answered);
    const losses = again.map((rack) => passIn(rack).loss);
    expect(losses.length).toBeGreaterThan(1);
    expect(losses).toEqual(losses.toSorted((a, b) => b - a));
    expect(Math.max(...rest.map((rack) => passIn(rack).loss))).toBeLessThan(Math.min(...losses));
    expect(again.length + rest.length).toBe(10);
    const asked = again.map((rack) => rack.asked);
    model.repeat(asked);
    const seen: AskedRack[] = [];
    for (let nth = 1; nth <= asked.length; nth++) {
      expect(asking(model)).toMatchObject({ question: 'pass', nth, of: asked.length, answer: null });
      seen.push(asking(model).asked);
      model.pass(firstThree(asking(model).asked));
      model.next();
    }
    expect(seen).toEqual(asked);
    expect(done(model).answered).toHaveLength(asked.length);
  });

  it('are summed up where somebody stops, and not where nothing was answered', () => {
    const short = openModel();
    short.start('sections', { fits: null });
    short.stop();
    expect(short.state.value).toEqual({ is: 'choosing', problem: null });
    short.start('sections', { fits: null });
    const [nearest, second] = houseKernel.card.sections.map(({ id }) => id);
    short.nameSections([nearest!, second!]);
    short.next();
    short.stop();
    const counts = metCounts(done(short).answered);
    expect(counts.map(({ count }) => count)).toEqual([1]);
    short.choose();
    expect(short.state.value).toEqual({ is: 'choosing', problem: null });
  });
});

describe('the sum in words', () => {
  const sum = { counts: [], racks: 10, most: null };

  it('says what the passes cost together and a rack, and the one that makes half of it', () => {
    expect(costSentences({ ...sum, cost: 2.64, most: { nth: 7, cost: 1.4 } })).toEqual([
      'All 10 racks together, the best passes come 2.6 tiles closer to a hand than yours.',
      'That is 0.3 tiles a rack, on average.',
      'Rack 7 alone makes 1.4 of it.',
    ]);
    expect(costSentences({ ...sum, cost: 0.3 })[1]).toBe('That is hardly anything a rack.');
    expect(costSentences({ ...sum, cost: 0.04 })).toEqual([
      'Together, your passes come as close to a hand as the best we found.',
    ]);
    expect(costSentences({ ...sum, racks: 1, cost: 1 })).toEqual([
      'The best pass comes 1.0 tile closer to a hand than yours, on average.',
    ]);
    expect([1, 4].map(doneTitle)).toEqual(['One rack done', '4 racks done']);
  });

  it('names the rack that makes half of the cost among several, and none where it is the only one', () => {
    const [dearest] = sortedOut(answered).again;
    expect(passSum([dearest!, ...sortedOut(answered).rest]).most?.nth).toBe(dearest!.nth);
    expect(passSum([dearest!]).most).toBeNull();
  });

  it('tells of each rack its verdict and what it cost, as the answer did', () => {
    for (const rack of answered) {
      const { loss } = passIn(rack);
      const told =
        rack.answer.kind === 'pass' ? rack.answer.review.story.choices[0]!.sentences.join(' ') : '';
      const [, cost] = /, ([\d.]+) tiles?$/.exec(rackSummary(rack)) ?? [];
      expect(cost === undefined).toBe(loss < 0.05);
      if (loss >= 0.25) expect(told).toContain(`That is ${cost} tiles closer on average.`);
    }
  });
});
