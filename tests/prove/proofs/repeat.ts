// The same choice judged twice: with the same seed the same bytes, with another seed the same verdict.
import {
  ANALYSIS_SEED,
  type Budget,
  DEEP,
  judgeOffered,
  type Question,
  SHALLOW,
} from '../../../shared-engine/index.ts';
import { analyst, choicesFrom } from '../analysis/choices.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, Size } from '../proof.ts';

const CHOICES: Record<Size, number> = { small: 12, full: 250 };
const OTHER_SEED = 0x7a_11_0f_15;

/** The small size looks briefly at few choices, so more of them change sides. */
const BARS: Record<Size, number> = { small: 0.75, full: 0.97 };
const BUDGETS: Record<Size, Budget> = { small: SHALLOW, full: DEEP };

export const proof: Proof = {
  summary: 'Judged again a choice keeps its bytes, and with other worlds its verdict.',
  async run({ seed, size }) {
    const choices = choicesFrom(`${seed} repeat`, CHOICES[size]);
    const budget = BUDGETS[size];
    let bytes = 0;
    let verdicts = 0;
    let opposite = 0;
    for (const { offered, asked } of choices) {
      const [one, again, other] = [ANALYSIS_SEED, ANALYSIS_SEED, OTHER_SEED].map((key) =>
        judgedWith(offered, asked, budget, key),
      ) as [Judged, Judged, Judged];
      if (one.bytes === again.bytes) bytes++;
      if (one.verdict === other.verdict) verdicts++;
      else if (one.verdict !== 'too-close' && other.verdict !== 'too-close') opposite++;
    }
    return [
      {
        what: 'choices judged again with the same seed, byte-identical',
        value: bytes,
        bar: `${choices.length}`,
        ok: bytes === choices.length,
      },
      {
        what: 'choices with the same verdict under two seeds',
        value: shareText(verdicts, choices.length),
        bar: `at least ${BARS[size] * 100} %`,
        ok: verdicts >= BARS[size] * choices.length,
      },
      {
        what: 'choices with opposite verdicts, neither too close to call',
        value: opposite,
        bar: 'at most 1 %',
        ok: opposite <= choices.length / 100,
      },
    ];
  },
};

interface Judged {
  readonly bytes: string;
  readonly verdict: string;
}

function judgedWith(
  offered: Question['offered'],
  asked: Question['asked'],
  budget: Budget,
  key: number,
): Judged {
  const judgement = judgeOffered(analyst, offered, asked, budget, key);
  return { bytes: JSON.stringify(judgement), verdict: judgement.verdict };
}
