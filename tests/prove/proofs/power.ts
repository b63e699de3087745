// What is costly is called so, and hardly ever is nothing said.
import { SMALL_LOSS } from '../../../shared-engine/analysis/comparison/verdict.ts';
import { judgedChoices } from '../analysis/judged-choices.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

/** The small size looks briefly at few choices. */
const BARS: Readonly<
  Record<Size, { readonly told: number; readonly unsure: number; readonly near: number }>
> = {
  small: { told: 0.4, unsure: 0.5, near: 0.8 },
  full: { told: 0.9, unsure: 0.1, near: 0.25 },
};

export const proof: Proof = {
  summary: 'Losses of 2δ and more are called costly, and few choices end in “Can’t say”.',
  async run({ seed, size }) {
    const choices = judgedChoices(seed, size);
    const { told, unsure, near } = BARS[size];
    const guilty = choices.filter(({ loss }) => loss.value >= 2 * SMALL_LOSS);
    const bordering = choices.filter(
      ({ loss }) => Math.min(Math.abs(loss.value), Math.abs(loss.value - SMALL_LOSS)) <= SMALL_LOSS,
    );
    const costly = guilty.filter(({ comparison }) => comparison.verdict === 'costly');
    return [
      row(
        'choices with a long-run loss of at least 2δ that are called costly',
        costly.length,
        guilty.length,
        {
          least: told,
        },
      ),
      row('choices of which nothing can be said', unsureAmong(choices), choices.length, { most: unsure }),
      row('the same among those within δ of a border', unsureAmong(bordering), bordering.length, {
        most: near,
      }),
    ];
  },
};

function unsureAmong(choices: ReturnType<typeof judgedChoices>): number {
  return choices.filter(({ comparison }) => comparison.verdict === 'cant-say').length;
}

function row(
  what: string,
  hits: number,
  all: number,
  { least = 0, most = 1 }: { readonly least?: number; readonly most?: number },
): ProofRow {
  return {
    what,
    value: shareText(hits, all),
    bar: least > 0 ? `at least ${least * 100} %` : `at most ${most * 100} %`,
    ok: hits >= least * all && hits <= most * all,
  };
}
