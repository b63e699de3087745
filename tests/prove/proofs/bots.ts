// How near the bots bring their racks, and how risky they pass, when four of one style play together.
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { finishRound } from '../../../shared-engine/bots/finish-round.ts';
import { houseCard } from '../../../shared-engine/card/house/card.ts';
import { createSwarKernel } from '../../../shared-engine/kernels/tiles-to-go/swar.ts';
import { type RiskGrade, riskGrade } from '../../../shared-engine/policy/pass-risk.ts';
import { STYLES, type StyleName } from '../../../shared-engine/policy/styles.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { openRound } from '../../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../../shared-engine/rules/exchange/evolve.ts';
import { seedNamed } from '../../kit/rounds.ts';
import type { Proof, ProofRow } from '../proof.ts';

const kernel = createSwarKernel(houseCard());

/** Styles without rollouts; the other has a proof of its own. */
const QUICK = STYLES.filter((style) => style !== 'thoughtful');

/** Bars set for a card of another make; the gap is the bar that carries over from card to card. */
const MOST_TO_GO = 5.4;
const LEAST_GAP = 2;

interface Played {
  /** Tiles to go at the close, the mean of four seats, one number a deal. */
  readonly toGo: readonly number[];
  /** Compulsory passes of three own tiles, and how many of them were of each grade. */
  readonly passes: number;
  readonly grades: ReadonlyMap<RiskGrade, number>;
}

export const proof: Proof = {
  summary:
    'Strong bots end the exchange near a hand, each style where it should, and guarded ones give less away.',
  async run({ seed, size }) {
    const deals = size === 'full' ? 300 : 40;
    const dealt = Array.from({ length: deals }, (_, deal) => seedNamed(`${seed}/bots/${deal}`));
    const played = new Map<StyleName, Played>(QUICK.map((style) => [style, playedBy(style, dealt)]));
    const of = (style: StyleName) => played.get(style)!;
    return [
      ...QUICK.map((style) => toGoRow(style, of(style))),
      gapRow(of('random').toGo, of('strong').toGo),
      orderRow('casual', 'typical', of),
      orderRow('typical', 'strong', of),
      ...(['pair', 'like-numbers'] as const).map((grade) => riskRow(grade, of('guarded'), of('strong'))),
    ];
  },
};

function playedBy(style: StyleName, seeds: readonly string[]): Played {
  const toGo: number[] = [];
  const grades = new Map<RiskGrade, number>();
  let passes = 0;
  for (const [deal, seed] of seeds.entries()) {
    const round = begin(openRound({ seed, dealer: SEATS[deal % 4]! }, { revealRacks: false }));
    const end = finishRound(round, (view, random) => chooseFor(style, view, kernel, random)).round;
    toGo.push(mean(end.racks.map((rack) => kernel.toGo(rack))));
    for (const step of end.resolved) {
      if (step.kind !== 'move' || step.step === 'courtesy-pass') continue;
      for (const tiles of step.gave.filter(({ length }) => length === 3)) {
        const grade = riskGrade(tiles);
        grades.set(grade, (grades.get(grade) ?? 0) + 1);
        passes++;
      }
    }
  }
  return { toGo, passes, grades };
}

function toGoRow(style: StyleName, { toGo }: Played): ProofRow {
  const value = `${mean(toGo).toFixed(3)} ± ${standardError(toGo).toFixed(3)}`;
  const what = `tiles to go at the close, four ${style}, mean of ${toGo.length} deals ± standard error`;
  if (style !== 'strong') return { what, value, bar: 'reported', ok: true };
  return { what, value, bar: `<= ${MOST_TO_GO}`, ok: mean(toGo) <= MOST_TO_GO };
}

/** The same deals under both, so the difference is taken deal by deal. */
function gapRow(random: readonly number[], strong: readonly number[]): ProofRow {
  const gaps = random.map((value, deal) => value - strong[deal]!);
  return {
    what: 'random minus strong, tiles, paired by deal ± standard error',
    value: `${mean(gaps).toFixed(3)} ± ${standardError(gaps).toFixed(3)}`,
    bar: `>= ${LEAST_GAP}`,
    ok: mean(gaps) >= LEAST_GAP,
  };
}

function orderRow(worse: StyleName, better: StyleName, of: (style: StyleName) => Played): ProofRow {
  const gaps = of(worse).toGo.map((value, deal) => value - of(better).toGo[deal]!);
  return {
    what: `${worse} minus ${better}, tiles, paired by deal ± standard error`,
    value: `${mean(gaps).toFixed(3)} ± ${standardError(gaps).toFixed(3)}`,
    bar: 'more than two standard errors above 0',
    ok: mean(gaps) > 2 * standardError(gaps),
  };
}

/** Rule of thumb of the trade (common practice, no source): a pair is the riskiest to pass, like numbers come next. */
function riskRow(grade: RiskGrade, guarded: Played, strong: Played): ProofRow {
  const share = ({ grades, passes }: Played) => (100 * (grades.get(grade) ?? 0)) / passes;
  return {
    what: `passes of three that give a ${grade}, in 100: guarded against strong`,
    value: `${share(guarded).toFixed(1)} against ${share(strong).toFixed(1)}`,
    bar: 'less than half',
    ok: share(guarded) < share(strong) / 2,
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function standardError(values: readonly number[]): number {
  const centre = mean(values);
  const squares = values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
  return Math.sqrt(squares / (values.length - 1) / values.length);
}
