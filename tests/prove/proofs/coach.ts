// The coach before a choice and the review after it: whoever passes as the coach says is not told to have erred.
import { type Advice, type CoachPorts, openCoachSession } from '../../../client/coach/coach-session.ts';
import { recordWithAnswer } from '../../../shared-engine/analysis/belief/situation.ts';
import { reachOf } from '../../../shared-engine/analysis/coach/reach.ts';
import { DEEP_BUDGET } from '../../../shared-engine/analysis/comparison/budget.ts';
import { analyzeDecision, decisionsIn } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { shuffled, stream } from '../../../shared-engine/rules/deal/random.ts';
import { bagOf, takeFrom } from '../../../shared-engine/rules/tiles/bag.ts';
import { analystOf } from '../../kit/analysts.ts';
import { atSomePass } from '../../kit/pass-situations.ts';
import { houseKernel } from '../../kit/reviews.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const SITUATIONS: Record<Size, number> = { small: 3, full: 200 };

export const proof: Proof = {
  summary: 'Whoever passes as the coach says is not told by the review to have erred.',
  async run({ seed, size, tell }) {
    const situations = SITUATIONS[size];
    const verdicts = new Map<string, number>();
    let [asked, held, judged, compared] = [0, 0, 0, 0];
    for (let n = 0; asked < situations; n++) {
      const { record, rack, decision } = atSomePass(n, `${seed} coach`);
      if (decision?.kind !== 'pass') continue;
      asked++;
      const { advice, looks } = await advised({ record, decision });
      judged += looks;
      if (takeFrom(bagOf(rack), advice.tiles) !== null) held++;
      const choice = { kind: 'pass', step: decision.step, tiles: advice.tiles, blind: 0 } as const;
      const { verdict } = judgedAs(recordWithAnswer(record, choice, 'player'));
      verdicts.set(verdict, (verdicts.get(verdict) ?? 0) + 1);
      const passable = shuffled(
        rack.filter((face) => face !== 'joker'),
        stream(seed, `other ${n}`),
      );
      const other = { ...choice, tiles: passable.slice(0, advice.tiles.length) };
      const { finalists } = judgedAs(recordWithAnswer(record, other, 'player'));
      if (finalists.some(({ tiles }) => tiles.join() === advice.tiles.join())) compared++;
      if (asked % 20 === 0) tell?.(rowOf(verdicts, asked));
    }
    return [
      rowOf(verdicts, asked),
      { what: 'passes named of tiles that are held', value: held, bar: `${asked}`, ok: held === asked },
      {
        what: 'reviews of any other pass that compare it with the one named',
        value: compared,
        bar: `≥ 99 of 100 of ${asked}`,
        ok: compared >= 0.99 * asked,
      },
      {
        what: 'passes judged before one was named, on average',
        value: Math.round((100 * judged) / asked) / 100,
        bar: 'reported',
        ok: true,
      },
    ];
  },
};

function rowOf(verdicts: ReadonlyMap<string, number>, asked: number): ProofRow {
  const worse = (verdicts.get('costly') ?? 0) + (verdicts.get('a-little-worse') ?? 0);
  const found = [...verdicts].map(([verdict, count]) => `${verdict} ${count}`).join(', ');
  return {
    what: `of ${asked} passes that the coach named, those that the review calls worse than another (${found})`,
    value: worse,
    bar: '0',
    ok: worse === 0,
  };
}

/** Asked as the page asks, the analysis being made at once. */
async function advised(
  choice: Parameters<typeof openCoachSession>[0],
): Promise<{ advice: Advice; looks: number }> {
  let advice: Advice | null = null;
  let looks = 0;
  const start: CoachPorts['start'] = ({ record }, { onChoice }) => {
    looks++;
    onChoice({ nth: decisionsIn(record).length - 1, analysis: judgedAs(record) });
    return () => {};
  };
  const findReach: CoachPorts['findReach'] = async (card, held, gone) => reachOf(card, bagOf(held), gone);
  const session = await openCoachSession(choice, houseKernel.card, { start, findReach });
  session.advise(
    (given) => {
      advice = given;
    },
    () => {},
  );
  if (advice === null) throw new Error('The coach has named no pass.');
  return { advice, looks };
}

function judgedAs(record: Parameters<typeof decisionsIn>[0]) {
  const analyst = analystOf(houseKernel.card);
  return analyzeDecision(analyst, record, decisionsIn(record).length - 1, { budget: DEEP_BUDGET });
}
