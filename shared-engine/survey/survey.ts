// Is it a good card? Its hands, what is on it twice, how evenly its sections come up, and how hard each pattern is.
import { type CardFile, type CompiledCard, compileCard, type Hand } from '../card/index.ts';
import { createSwarKernel, toGoBySection } from '../kernels/index.ts';
import { bagOf, drawn, FACES, type Face, FULL_SET, facesOf, JOKER_INDEX, stream } from '../rules/index.ts';
import { missingByDeal, pointsFor } from './difficulty.ts';

/** Racks dealt for a survey. */
export const SURVEY_DEALS = 2_000;

export interface SurveyedPattern {
  readonly id: string;
  readonly hands: number;
  readonly points: number;
  /** Points by measured difficulty: ten for each tile still missing after twelve turns of aiming at it. */
  readonly measuredPoints: number;
}

export interface CardSurvey {
  readonly hands: number;
  readonly patterns: readonly SurveyedPattern[];
  /** Pairs of pattern ids that have a hand in common, with how many. */
  readonly twice: readonly { readonly one: string; readonly other: string; readonly hands: number }[];
  /** Percent of the dealt racks to which each section is nearest, by section index; ties are split evenly. */
  readonly nearest: readonly number[];
  /** Tiles to go from a dealt rack to its nearest hand, on average. */
  readonly meanToGo: number;
  /** Mean number of each face in a hand, every pattern counting alike; most wanted first, without jokers. */
  readonly wanted: readonly { readonly face: Face; readonly mean: number }[];
}

/** Racks looked at so far, and the survey with the last of them. */
export type SurveyProgress =
  | { readonly kind: 'racks'; readonly done: number }
  | { readonly kind: 'survey'; readonly survey: CardSurvey };

/** Takes a card that `parseCard` has accepted; reports every hundred racks, at last the survey. */
export function* surveyCard(file: CardFile, seed: string, deals: number): Generator<SurveyProgress> {
  const card = compileCard(file);
  const kernel = createSwarKernel(card);
  const missingIn = missingByDeal(card, seed);
  const tiles = facesOf(FULL_SET);
  const shares = card.sections.map(() => 0);
  const missing = card.patterns.map(() => 0);
  let toGo = 0;
  for (let deal = 0; deal < deals; deal++) {
    const rack = bagOf(drawn(tiles, 13, stream(seed, `rack-${deal}`)));
    const bySection = toGoBySection(kernel, rack);
    const least = Math.min(...bySection);
    const ties = bySection.filter((distance) => distance === least).length;
    for (const [section, distance] of bySection.entries()) {
      if (distance === least) shares[section]! += 100 / ties / deals;
    }
    toGo += least;
    for (const [pattern, count] of missingIn(deal).entries()) missing[pattern]! += count;
    if ((deal + 1) % 100 === 0) yield { kind: 'racks', done: deal + 1 };
  }
  const byPattern = handsByPattern(card);
  const survey: CardSurvey = {
    hands: card.hands.length,
    patterns: card.patterns.map(({ id, points }, pattern) => ({
      id,
      hands: byPattern[pattern]!.length,
      points,
      measuredPoints: pointsFor(missing[pattern]! / deals),
    })),
    twice: handsTwice(card, byPattern),
    nearest: shares,
    meanToGo: toGo / deals,
    wanted: wantedFaces(byPattern),
  };
  yield { kind: 'survey', survey };
}

function handsByPattern({ patterns, hands }: CompiledCard): Hand[][] {
  const byPattern: Hand[][] = patterns.map(() => []);
  for (const hand of hands) byPattern[hand.pattern]!.push(hand);
  return byPattern;
}

/** An open and a concealed pattern of the same tiles are two patterns; two of one kind are one too many. */
function handsTwice({ patterns }: CompiledCard, byPattern: readonly Hand[][]): CardSurvey['twice'] {
  const owners = new Map<string, number[]>();
  for (const [pattern, hands] of byPattern.entries()) {
    for (const { singles, groups } of hands) {
      const key = `${patterns[pattern]!.concealed} ${singles.join()};${groups.join()}`;
      owners.set(key, [...(owners.get(key) ?? []), pattern]);
    }
  }
  const pairs = new Map<string, { one: string; other: string; hands: number }>();
  for (const [first, ...rest] of owners.values()) {
    for (const other of rest) {
      const key = `${first} ${other}`;
      const hands = (pairs.get(key)?.hands ?? 0) + 1;
      pairs.set(key, { one: patterns[first!]!.id, other: patterns[other]!.id, hands });
    }
  }
  return [...pairs.values()];
}

function wantedFaces(byPattern: readonly Hand[][]): CardSurvey['wanted'] {
  const sums = FACES.map(() => 0);
  for (const hands of byPattern) {
    for (const { singles, groups } of hands) {
      for (const index of FACES.keys()) {
        sums[index]! += (singles[index]! + groups[index]!) / hands.length / byPattern.length;
      }
    }
  }
  return FACES.map((face, index) => ({ face, mean: sums[index]! }))
    .filter((_, index) => index !== JOKER_INDEX)
    .sort((a, b) => b.mean - a.mean);
}
