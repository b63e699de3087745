// What a review on the screen says twice and not alike, or otherwise than the analyses it was given, as kinds in words.
import type { DeepAnalysis } from '../../shared-engine/analysis/review/analysis.ts';
import { VERDICT_NAMES } from '../../shared-engine/analysis/review/choice-verdict.ts';
import type { ChoiceReview } from '../../shared-engine/analysis/review/review.ts';
import { numberPhrase } from '../../shared-engine/analysis/review/sentences/instead.ts';
import { STEP_PHRASES } from '../../shared-engine/analysis/review/sentences/phrases.ts';
import { tileName } from '../../shared-engine/analysis/review/sentences/tiles.ts';
import { bagOf, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { isOverruled } from './overruled.ts';
import type { ReviewOnScreen, ShownPass } from './review-on-screen.ts';

const PRAISE = /^(Well played|At first look, each)/;

/** A choice of the player, and what the page was given of it; null until then. */
export interface GivenChoice {
  readonly choice: ChoiceReview;
  readonly analysis: DeepAnalysis | null;
}

type Kinds = readonly (readonly [string, boolean])[];

/** Empty where everything on the screen tells one story. */
export function screenContradictions(
  screen: ReviewOnScreen,
  given: readonly GivenChoice[],
): readonly string[] {
  const kinds = [...ofStrip(screen, given), ...ofOpenStep(screen, given), ...ofTop(screen, given)];
  return kinds.filter(([, holds]) => holds).map(([kind]) => kind);
}

function ofStrip({ strip, playedOn, progress }: ReviewOnScreen, given: readonly GivenChoice[]): Kinds {
  const done = given.filter(({ analysis }) => analysis !== null).length;
  const isPartly = done > 0 && done < given.length;
  const otherwise = strip.some(({ verdict }, nth) => {
    const analysis = given[nth]?.analysis ?? null;
    return analysis !== null && verdict !== VERDICT_NAMES[analysis.verdict];
  });
  const passes = given.filter(({ choice }) => choice.kind === 'pass');
  const inWins = passes.every(({ analysis }) => analysis !== null);
  return [
    ['a choice is missing from the strip', strip.length !== given.length],
    ['the strip has another verdict than the analysis', otherwise],
    ['not one step of the strip is open', strip.filter(({ isOpen }) => isOpen).length !== 1],
    ['the open step is marked as new', strip.some(({ isNew, isOpen }) => isNew && isOpen)],
    ['a first answer is marked as new', strip.some(({ isNew }, nth) => isNew && !given[nth]?.analysis)],
    ['the page counts other answers than it was given', playedOn !== (isPartly ? done : null)],
    ['the chart of the round mixes wins and tiles', progress.startsWith('Wins') !== inWins],
  ];
}

function ofOpenStep({ strip, open }: ReviewOnScreen, given: readonly GivenChoice[]): Kinds {
  const at = strip.findIndex(({ isOpen }) => isOpen);
  const step = strip[at];
  const { choice, analysis = null } = given[at] ?? {};
  if (step === undefined || choice === undefined) return [];
  const title: Kinds[number] = [
    'the open step is not the one of the strip',
    open.title !== `${step.name}: ${step.verdict}`,
  ];
  if (analysis === null) return [title, ['a chart of what was not played on', open.rows.length > 0]];
  const [first] = open.rows;
  const isPraised = step.verdict === VERDICT_NAMES.best || step.verdict === VERDICT_NAMES['just-as-good'];
  const isWorse = step.verdict === VERDICT_NAMES.costly || step.verdict === VERDICT_NAMES['a-little-worse'];
  const bars = open.rows.flatMap(({ bar }) => bar ?? []);
  const named = open.rows.filter(({ tags }) => tags.includes('Better')).map(({ name }) => name);
  const beside = betterIn(open.pair);
  return [
    title,
    ['a row is missing from the chart', open.rows.length !== analysis.finalists.length],
    ['a first look beside its deep answer', /first look|tiles closer/.test(open.sentences)],
    [
      'praised beside a bar that is clearly better',
      isPraised && bars.some(({ from }) => from > open.bandEnd),
    ],
    [
      'called best beside a bar that is better',
      step.verdict === 'Best' && bars.some(({ from }) => from > open.own),
    ],
    [
      'something better is told, or not told, against the verdict',
      /(?<!perhaps )\bbetter: /i.test(open.sentences) !== isWorse,
    ],
    [
      'the chart names another best row than the sentences',
      isWorse && !tells(open.sentences, choice, analysis),
    ],
    ['the better row is not the first, or not one', named.join() !== (isWorse ? first?.name : '')],
    ['the better tiles are not the better row', beside !== null && beside !== first?.name],
    ['no better tiles beside a worse pass', choice.kind === 'pass' && (beside !== null) !== isWorse],
  ];
}

function ofTop(screen: ReviewOnScreen, given: readonly GivenChoice[]): Kinds {
  const { headline, top, strip, open, pointsTo } = screen;
  const done = given.filter(({ analysis }) => analysis !== null);
  const worst = worstOf(given);
  const isPraising = PRAISE.test(headline);
  const opened = strip.find(({ isOpen }) => isOpen)?.name ?? null;
  const isPartly = done.length > 0 && done.length < given.length;
  const kinds: Kinds = [
    ['the top is praise before all is known', isPartly && isPraising],
    ['the top does not say that it is not over', isPartly && !headline.startsWith('So far')],
    ['the top is a first look beside deep answers', done.length > 0 && headline.includes('first look')],
    ['the top speaks of the open step, and a button leads there', pointsTo !== null && pointsTo === opened],
  ];
  if (worst === null || worst.analysis === null) {
    const tellsBetter = done.length > 0 && (/better: /i.test(headline) || betterIn(top) !== null);
    return [...kinds, ['the top knows something better, and no step does', tellsBetter]];
  }
  const { choice, analysis } = worst;
  const meant = strip[given.indexOf(worst)]?.name ?? null;
  const isMeantOpen = opened === meant;
  const isPass = choice.kind === 'pass';
  return [
    ...kinds,
    ['the top is praise beside a worse choice', isPraising],
    ['the top speaks of another choice than the worst', !headline.includes(STEP_PHRASES[choice.step])],
    ['the top names another choice than the better one', !tells(headline, choice, analysis)],
    ['the way to what the top speaks of is missing', pointsTo !== (isMeantOpen ? null : meant)],
    ['the pair at the top is not that of a worse pass', (betterIn(top) !== null) !== isPass],
    [
      'the pair at the top is not the pair of the open step',
      isPass && isMeantOpen && betterIn(top) !== betterIn(open.pair),
    ],
  ];
}

/** What there is most to learn from among the deep answers; null where nothing was worse. */
function worstOf(given: readonly GivenChoice[]): GivenChoice | null {
  const decisive = given.filter(({ choice, analysis }) => !isOverruled(choice, analysis));
  const [first] = [decisive, given].flatMap((those) =>
    (['costly', 'a-little-worse'] as const).flatMap((verdict) =>
      those.filter(({ analysis }) => analysis?.verdict === verdict).toSorted((a, b) => lossOf(b) - lossOf(a)),
    ),
  );
  return first ?? null;
}

function lossOf({ analysis }: GivenChoice): number {
  return analysis?.loss?.value ?? 0;
}

function betterIn(pair: readonly ShownPass[]): string | null {
  return pair.find(({ caption }) => caption === 'Better')?.tiles ?? null;
}

/** Whether the text names the alternative of the analysis: what it passes that was not passed, or its number. */
function tells(text: string, choice: ChoiceReview, { finalists, bestAlternative }: DeepAnalysis): boolean {
  const named = finalists[bestAlternative ?? 0];
  if (named === undefined) return false;
  if (choice.kind !== 'pass') return text.includes(numberPhrase(choice.kind, named.number ?? 0));
  const played = bagOf(choice.played.tiles);
  const instead = bagOf(named.tiles).map((count, face) => Math.max(0, count - played[face]!));
  return facesOf(instead).every((face) => text.includes(tileName(face)));
}
