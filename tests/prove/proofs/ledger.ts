// Luck and choices of a round: the parts add up, luck is worth nothing on average, and choices cost what they cost.
import { ledgerOf } from '../../../shared-engine/analysis/ledger/round-ledger.ts';
import type { Ledger } from '../../../shared-engine/analysis/ledger/settle.ts';
import { seatView } from '../../../shared-engine/rules/view/view.ts';
import { analyst, card } from '../analysis/choices.ts';
import { ledgerRound, OPPONENTS, type Opponents } from '../analysis/ledger-rounds.ts';
import { chancesOn } from '../analysis/table-chances.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { sampleOf } from '../statistics/student.ts';

/** The bars are for rounds against these; against the others it is reported how far off a ledger is. */
const HELD: Opponents = 'typical';
const ROUNDS: Record<Size, number> = { small: 8, full: 2_000 };
const REPORTED_ROUNDS = 400;
/**
 * A mean over rounds does not need each of them closely: with few deals a round it is as right, and what they add to its
 * spread is little beside what luck does to a round.
 */
const BATCHES: Record<Size, number> = { small: 8, full: 8 };

export const proof: Proof = {
  summary:
    'Luck and choices add up exactly; luck is nothing on average; choices cost what playing steadily would have won.',
  async run({ seed, size, tell }) {
    const played = size === 'full' ? OPPONENTS : [HELD];
    return played.flatMap((opponents) => {
      const found = against(opponents, seed, size);
      for (const row of found) tell?.(row);
      return found;
    });
  },
};

const NAMES: Readonly<Record<Opponents, string>> = {
  typical: 'typical bots, our guess at a club player',
  model: 'who pass as belief takes them to',
  strong: 'strong bots',
  casual: 'casual bots',
  rollouts: 'who play as the seats of the rollouts',
};

function against(opponents: Opponents, seed: string, size: Size): readonly ProofRow[] {
  const isHeld = opponents === HELD;
  const rounds = isHeld ? ROUNDS[size] : REPORTED_ROUNDS;
  const chances = chancesOn(card);
  let exact = 0;
  const luck: number[] = [];
  const charged: number[] = [];
  const gap: number[] = [];
  for (let n = 0; n < rounds; n++) {
    const played = ledgerRound(seed, n, opponents, false);
    const steady = ledgerRound(seed, n, opponents, true);
    const ledger = ledgerOf(analyst, seatView(played, 0).record, BATCHES[size]);
    if (addsUp(ledger)) exact++;
    luck.push(ledger.luck.value);
    charged.push(-ledger.choices.value);
    const [won, wonSteadily] = [played, steady].map(
      ({ racks, deal }) => 100 * chances({ racks, dealer: deal.dealer })[0]!,
    ) as [number, number];
    gap.push(wonSteadily - won + ledger.choices.value);
  }
  const name = NAMES[opponents];
  const [meanLuck, meanGap] = [luck, gap].map(sampleOf) as [Sample, Sample];
  return [
    {
      what: `ledgers of ${rounds} rounds whose parts add up to the thousandth, against three ${name}`,
      value: exact,
      bar: String(rounds),
      ok: exact === rounds,
    },
    {
      what: `mean luck, against three ${name}`,
      ...zeroWithin(meanLuck, { rounds, isHeld }),
    },
    {
      what: `what steady play would have won more, less what choices were charged (${rounded(sampleOf(charged).mean)} on average), against three ${name}`,
      ...zeroWithin(meanGap, { rounds, isHeld }),
    },
  ];
}

type Sample = ReturnType<typeof sampleOf>;

/** The 99 % interval of a mean that should be 0; against others than typical bots it is told how far off it is. */
function zeroWithin(
  { mean, deviation }: Sample,
  { rounds, isHeld }: { readonly rounds: number; readonly isHeld: boolean },
): Omit<ProofRow, 'what'> {
  const halfWidth = (2.576 * deviation) / Math.sqrt(rounds);
  const isZero = Math.abs(mean) <= halfWidth;
  return {
    value: `${rounded(mean)} ± ${rounded(halfWidth)}`,
    bar: isHeld ? 'its 99 % interval holds 0' : 'reported',
    ok: isZero || !isHeld,
  };
}

function addsUp({ start, luck, choices, standIns, jumps, close, entries }: Ledger): boolean {
  const thousandths = (...parts: readonly number[]) =>
    parts.reduce((sum, part) => sum + Math.round(1000 * part), 0);
  const parts = entries.flatMap(({ choice, after }) => [choice, after]);
  const end = Math.round(1000 * close.value);
  return (
    thousandths(start.value, luck.value, choices.value, standIns, jumps) === end &&
    thousandths(start.value, ...parts) === end
  );
}

function rounded(value: number): number {
  return Math.round(value * 100) / 100;
}
