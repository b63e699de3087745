// The games that a win model is fitted to: made card by card, and stored where another fit wants the same ones.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import type { CompiledCard } from '../../card/compiled.ts';
import { houseCard } from '../../card/house/card.ts';
import type { SimdModule } from '../../kernels/simd/module.ts';
import { stream } from '../../rules/deal/random.ts';
import { SEATS, type Seat } from '../../rules/deal/seat.ts';
import type { Bag } from '../../rules/tiles/bag.ts';
import type { Four } from '../../rules/tiles/face.ts';
import { gamesOn, type TableGames, withTileChanged } from './games.ts';
import { progressBar } from './progress-bar.ts';
import { MOST_SECTIONS, variantCard } from './variant-card.ts';

/** Cards beside the house card: from one section to all of them, so that the wall is known on small cards too. */
const VARIANTS = 32;
/** Of a hundred rounds, those on the house card. */
const HOUSE_PERCENT = 60;

export interface GameTerms {
  readonly seed: string;
  readonly rounds: number;
  /** Plays a round: half of them from the racks as the exchange left them, half with a tile of each seat changed. */
  readonly plays: number;
  /** Games in which discards do not look at what lies open. */
  readonly race?: true;
}

/** One table, and how often each seat won and nobody did. */
export interface Sample {
  readonly racks: Four<Bag>;
  readonly dealer: Seat;
  /** By seat, then wall games. */
  readonly won: readonly number[];
}

export interface CardSamples {
  readonly card: CompiledCard;
  readonly samples: readonly Sample[];
}

export function sampleOf({ racks, dealer, results }: TableGames): Sample {
  const won = [0, 0, 0, 0, 0];
  for (const { winner } of results) won[winner ?? SEATS.length]!++;
  return { racks, dealer, won };
}

/** By the same terms the same samples; `path` names a file to read them from, or to store them in where it is not there. */
export function samplesFor(terms: GameTerms, simd: SimdModule, path: string | null): readonly CardSamples[] {
  const cards = [
    houseCard(),
    ...Array.from({ length: VARIANTS }, (_, n) => variantCard(`${terms.seed} ${n}`, 1 + (n % MOST_SECTIONS))),
  ];
  if (path !== null && existsSync(path)) return storedSamples(path, terms, cards);
  const show = progressBar('rounds', terms.rounds);
  let done = 0;
  const made = cards.map((card, index): CardSamples => {
    const games = gamesOn(card, simd, terms.race);
    const share = index === 0 ? HOUSE_PERCENT : (100 - HOUSE_PERCENT) / VARIANTS;
    const samples = Array.from({ length: Math.round((terms.rounds * share) / 100) }, (_, n) => {
      show(++done);
      return samplesOfRound(games, `${terms.seed} ${index} ${n}`, terms.plays);
    });
    return { card, samples: samples.flat() };
  });
  if (path !== null) writeFileSync(path, JSON.stringify([terms, made.map(({ samples }) => samples)]));
  return made;
}

function samplesOfRound(
  { tableOf, played }: ReturnType<typeof gamesOn>,
  name: string,
  plays: number,
): readonly Sample[] {
  const table = tableOf(name);
  const random = stream(name, 'changed');
  const changed = SEATS.reduce((before, seat) => withTileChanged(before, seat, random), table);
  const half = Math.floor(plays / 2);
  return [sampleOf(played(table, name, plays - half)), sampleOf(played(changed, `${name} changed`, half))];
}

function storedSamples(path: string, terms: GameTerms, cards: readonly CompiledCard[]): CardSamples[] {
  const [storedTerms, stored]: [GameTerms, Sample[][]] = JSON.parse(readFileSync(path, 'utf8'));
  if (JSON.stringify(storedTerms) !== JSON.stringify(terms)) {
    throw new Error(`${path} holds games of other terms: delete it or name another file.`);
  }
  return cards.map((card, index) => ({ card, samples: stored[index]! }));
}
