// The house card, or any card file: its size, its balance over dealt racks, and points beside measured difficulty.
import { readFileSync } from 'node:fs';
import type { CardFile } from '../../../shared-engine/card/format.ts';
import { HOUSE_CARD, houseCard } from '../../../shared-engine/card/house/card.ts';
import { parseCard } from '../../../shared-engine/card/parse.ts';
import {
  meanMissing,
  POINTS_DEALS,
  POINTS_SEED,
  pointsFor,
} from '../../../shared-engine/survey/difficulty.ts';
import { type CardSurvey, SURVEY_DEALS, surveyCard } from '../../../shared-engine/survey/survey.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';

const RACKS: Record<Size, number> = { small: SURVEY_DEALS, full: 10_000 };

export const proof: Proof = {
  summary:
    'The house card has its patterns and sections, none of them nearest too often or too seldom; `prove -- card FILE` says the same of any card.',
  async run({ seed, size, file }) {
    if (file !== undefined) return rowsOfFile(file, seed, RACKS[size]);
    return [...counts(), ...balance(HOUSE_CARD, surveyOf(HOUSE_CARD, seed, RACKS[size])), pointsRow(size)];
  },
};

function surveyOf(card: CardFile, seed: string, racks: number): CardSurvey {
  for (const step of surveyCard(card, seed, racks)) if (step.kind === 'survey') return step.survey;
  throw new Error('A survey ends with its figures.');
}

function rowsOfFile(file: string, seed: string, racks: number): ProofRow[] {
  const json: unknown = JSON.parse(readFileSync(file, 'utf8'));
  const parsed = parseCard(json);
  if (!parsed.ok) {
    return parsed.problems.map(({ message }) => ({ what: message, value: false, bar: 'none', ok: false }));
  }
  const survey = surveyOf(parsed.card, seed, racks);
  const figure = (what: string, value: number | string): ProofRow => ({ what, value, bar: 'none', ok: true });
  const faces = (list: CardSurvey['wanted']) => list.map(({ face }) => face).join(', ');
  return [
    figure('hands', survey.hands),
    figure('tiles to go from a dealt rack, on average', Math.round(survey.meanToGo * 100) / 100),
    figure('wanted most', faces(survey.wanted.slice(0, 5))),
    figure('wanted least', faces(survey.wanted.slice(-5))),
    ...survey.twice.map(
      ({ one, other, hands }): ProofRow => ({
        what: `hands of ${one} that ${other} has too`,
        value: hands,
        bar: '0',
        ok: false,
      }),
    ),
    ...balance(parsed.card, survey),
    ...survey.patterns.map(({ id, points, measuredPoints }) =>
      figure(`${id}: points, and by measured difficulty`, `${points}, ${measuredPoints}`),
    ),
  ];
}

function counts(): ProofRow[] {
  const { patterns, sections, hands } = houseCard();
  const shapes = new Set(
    HOUSE_CARD.patterns.map(({ groups }) =>
      groups
        .map(({ size }) => size)
        .sort()
        .join('-'),
    ),
  );
  return [
    { what: 'patterns', value: patterns.length, bar: 'at least 48', ok: patterns.length >= 48 },
    { what: 'sections', value: sections.length, bar: 'at least 8', ok: sections.length >= 8 },
    { what: 'shapes (partitions of 14)', value: shapes.size, bar: 'at least 12', ok: shapes.size >= 12 },
    {
      what: 'hands',
      value: hands.length,
      bar: '700 to 1500',
      ok: hands.length >= 700 && hands.length <= 1500,
    },
  ];
}

function balance({ sections }: CardFile, { nearest }: CardSurvey): ProofRow[] {
  return sections.map(({ name }, section): ProofRow => {
    const percent = nearest[section]!;
    return {
      what: `${name} nearest in, % of the dealt racks of 13, ties split evenly`,
      value: Math.round(percent * 100) / 100,
      bar: '4 to 25',
      ok: percent >= 4 && percent <= 25,
    };
  });
}

/** The small size measures on a tenth of the deals and allows for the noise of that. */
function pointsRow(size: Size): ProofRow {
  const card = houseCard();
  const [deals, allowed] = size === 'full' ? [POINTS_DEALS, 0] : [POINTS_DEALS / 10, 2];
  const differences = meanMissing(card, POINTS_SEED, deals).map((missing, pattern) =>
    Math.abs(pointsFor(missing) - card.patterns[pattern]!.points),
  );
  const largest = Math.max(...differences);
  return {
    what: `largest difference between the points of a pattern and ten times its missing tiles (seed ${POINTS_SEED}, ${deals} deals)`,
    value: largest,
    bar: `at most ${allowed}`,
    ok: largest <= allowed,
  };
}
