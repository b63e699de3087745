// Nobody is told of a clearly better choice where there was none.
import {
  analyse,
  type Budget,
  createDraws,
  DEEP,
  RESULT_WIDTH,
  race,
  SHALLOW,
  SMALL_LOSS,
  type WorldSource,
} from '../../../shared-engine/index.ts';
import { analyst, choicesFrom } from '../analysis/choices.ts';
import { NOWHERE } from '../analysis/placeholder-situation.ts';
import { referenceOf } from '../analysis/long-run.ts';
import { shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const CHOICES: Record<Size, number> = { small: 10, full: 250 };
const BATCHES: Record<Size, number> = { small: 32, full: 256 };
const NULL_GAMES: Record<Size, number> = { small: 60, full: 5_000 };
const RIVALS = 9;

export const proof: Proof = {
  summary: 'A better choice is spoken of only where a long run finds one, and never in a game of equals.',
  async run({ seed, size }) {
    return [
      ...againstLongRun(seed, size),
      amongEquals(size, 'deep', DEEP),
      amongEquals(size, 'shallow', SHALLOW),
    ];
  },
};

function againstLongRun(seed: string, size: Size): ProofRow[] {
  const budget = size === 'full' ? DEEP : SHALLOW;
  let innocent = 0;
  let blamed = 0;
  let beyondDoubt = 0;
  let guilty = 0;
  let told = 0;
  for (const { offered, asked } of choicesFrom(`${seed} blame`, CHOICES[size])) {
    const { finalists, chosen, verdict } = analyse(analyst, offered, asked, budget)!;
    const reference = referenceOf(
      offered,
      finalists.map(({ alternative }) => alternative),
      BATCHES[size],
    );
    const played = finalists.indexOf(chosen);
    const ahead = finalists.map((_, rival) => reference.ahead(rival, played));
    const most = ahead.reduce((worst, other) => (other.value > worst.value ? other : worst));
    if (most.value <= SMALL_LOSS) {
      innocent++;
      if (verdict !== 'better-exists') continue;
      blamed++;
      if (most.value + most.within <= SMALL_LOSS) beyondDoubt++;
    } else {
      guilty++;
      if (verdict === 'better-exists') told++;
    }
  }
  return [
    {
      what: 'choices blamed although the true loss is at most the smallest one told',
      value: shareText(blamed, innocent),
      bar: 'at most 1 %',
      ok: blamed <= innocent / 100,
    },
    {
      what: 'of these, beyond the error of the long run itself',
      value: beyondDoubt,
      bar: 'reported',
      ok: true,
    },
    {
      what: 'choices with a larger true loss that were told so',
      value: shareText(told, guilty),
      bar: 'reported',
      ok: true,
    },
  ];
}

/** Every alternative has the same outlook in truth; what differs is luck, 3 points a batch. */
function amongEquals(size: Size, name: string, { looks }: Budget): ProofRow {
  const games = NULL_GAMES[size];
  let blamed = 0;
  const budget = { field: RIVALS + 1, rounds: [], looks };
  const finalists = Array.from({ length: RIVALS + 1 }, (_, n) => ({
    tiles: [n],
    number: null,
    act: [n, -1, -1, 1],
    kept: 0,
  }));
  for (let game = 0; game < games; game++) {
    const { verdict } = race(
      equals(game),
      NOWHERE,
      null,
      { finalists, luck: [] },
      finalists[3]!,
      null,
      budget,
    );
    if (verdict === 'better-exists') blamed++;
  }
  return {
    what: `games of ${RIVALS + 1} equal alternatives, ${name} looks: a better one said to exist`,
    value: shareText(blamed, games),
    bar: 'at most 5 %',
    ok: blamed <= games / 20,
  };
}

function equals(game: number): WorldSource {
  return {
    play(first, batches, acts) {
      const means = new Float64Array(batches * acts.length * RESULT_WIDTH);
      for (let b = 0; b < batches; b++) {
        const draws = createDraws(game, first + b);
        for (const [a] of acts.entries()) {
          let luck = 0;
          for (let n = 0; n < 4; n++) luck += draws.uniform() - 0.5;
          means[(b * acts.length + a) * RESULT_WIDTH] = 25 + luck * 5.2;
        }
      }
      return { batches, acts: acts.length, means };
    },
  };
}
