// What of a review's story contradicts the review it is told of, or itself, as kinds in words.

import type { Verdict } from '../../shared-engine/analysis/comparison/verdict.ts';
import type { DeepAnalysis, Finalist } from '../../shared-engine/analysis/review/analysis.ts';
import type { ChoiceReview, ChoiceStory, Review } from '../../shared-engine/analysis/review/review.ts';
import { STEP_PHRASES } from '../../shared-engine/analysis/review/sentences/phrases.ts';
import { tileList } from '../../shared-engine/analysis/review/sentences/tiles.ts';
import { bagOf, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { isOverruled } from './overruled.ts';

const PRAISES = /^(Well played|At first look, each)/;
/** Worst first; what is as good as the best is worth least. */
const ORDER = ['costly', 'a-little-worse'] as const;

/** Empty where one state tells one story. */
export function contradictionsIn({ choices, story }: Review): readonly string[] {
  const found = choices.flatMap((choice, nth) => inChoice(choice, story.choices[nth]!));
  const own = choices.filter(({ by }) => by === 'player');
  const meant = own.length > 0 ? own : choices;
  return [...new Set([...found, ...inHeadline(meant, choices[story.opened], story.headline.join(' '))])];
}

function inChoice(choice: ChoiceReview, { verdict, sentences, rows }: ChoiceStory): readonly string[] {
  const { analysis } = choice;
  if (analysis.depth === 'quick') {
    return rows.length > 0 ? ['a chart of what was not played on'] : [];
  }
  const text = sentences.join(' ');
  const told = analysis.finalists[rows[0] ?? -1];
  const lower = analysis.finalists.map(({ difference: { value, halfWidth } }) => value - halfWidth);
  const praised = verdict === 'best' || verdict === 'just-as-good';
  const better = ORDER.some((worse) => worse === verdict);
  const kinds: readonly (readonly [string, boolean])[] = [
    ['a verdict that is not the one of the analysis', verdict !== verdictIn(analysis)],
    ['costly, and among nobody that it tells of', verdict === 'costly' && /do not call it costly/.test(text)],
    [
      'called best beside a row that lies wholly above it',
      verdict === 'best' && lower.some((end) => end > 0),
    ],
    ['praised beside a row that is clearly better', praised && lower.some((end) => end > analysis.smallLoss)],
    ['the alternative named is not the top row of the chart', rows[0] !== (analysis.bestAlternative ?? 0)],
    ['a better choice is told, and another one is the top row', better && !names(text, choice, told)],
    ['a first look beside its deep answer', /first look|tiles closer/.test(text)],
    [
      'a pass that is told to be worse is praised',
      better && /you kept|No better|came out better/i.test(text),
    ],
    ['a better choice is told, and that there is none', praised && /better: /i.test(text)],
    [
      'a tile is called the reason that does not make half of the difference',
      /One tile makes|^Keep |\. Keep | is worth keeping: /.test(text) &&
        (analysis.why?.reason ?? null) === null,
    ],
    [
      'a number is not told to have made no difference, or is told so and made one',
      /made no difference/.test(text) !==
        (isOverruled(choice, analysis) && (better || choice.kind === 'vote')),
    ],
    ['a row is missing from the chart', new Set(rows).size !== analysis.finalists.length],
  ];
  return kinds.filter(([, holds]) => holds).map(([kind]) => kind);
}

/** Whether the text names this alternative as what would have been better. */
function names(text: string, choice: ChoiceReview, told: Finalist | undefined): boolean {
  if (told === undefined) return false;
  if (choice.kind !== 'pass') {
    const words = {
      blind: 'blind',
      vote: told.number === 1 ? 'continue' : 'stop',
      ask: `ask for ${told.number}`,
    };
    return text.includes(words[choice.kind]);
  }
  const played = bagOf(choice.played.tiles);
  const instead = bagOf(told.tiles).map((count, face) => Math.max(0, count - played[face]!));
  const more = { faces: choice.played.tiles, word: 'another' } as const;
  return text.includes(`pass ${tileList(facesOf(instead), more)}`);
}

function inHeadline(
  meant: readonly ChoiceReview[],
  opened: ChoiceReview | undefined,
  headline: string,
): readonly string[] {
  const deep = meant.flatMap(({ analysis }) => (analysis.depth === 'deep' ? [analysis] : []));
  const such = meant
    .filter((choice) => !isOverruled(choice, choice.analysis.depth === 'deep' ? choice.analysis : null))
    .map(({ analysis }) => analysis);
  const [worst] = [deep.filter((analysis) => such.includes(analysis)), deep].flatMap((those) =>
    ORDER.flatMap((verdict) => largest(those.filter((analysis) => verdictIn(analysis) === verdict))),
  );
  const whole = deep.length === meant.length;
  const speaks = opened !== undefined && headline.includes(STEP_PHRASES[opened.step]);
  const kinds: readonly (readonly [string, boolean])[] = [
    [
      'the headline praises every choice, and the verdicts do not',
      PRAISES.test(headline) && worst !== undefined,
    ],
    ['the headline praises before all is known', deep.length > 0 && !whole && PRAISES.test(headline)],
    ['the headline is a first look beside deep answers', deep.length > 0 && headline.includes('first look')],
    [
      'the headline does not say that it is not over',
      deep.length > 0 && !whole && !headline.startsWith('So far'),
    ],
    [
      'the headline does not name what was better by its verdict',
      worst !== undefined &&
        !(
          verdictIn(worst) === 'costly' ? / Better: / : / (A little|At least a little|Probably) better: /
        ).test(headline),
    ],
    ['the page opens another choice', worst !== undefined && (opened?.analysis !== worst || !speaks)],
  ];
  return kinds.filter(([, holds]) => holds).map(([kind]) => kind);
}

function largest(analyses: readonly DeepAnalysis[]): readonly DeepAnalysis[] {
  const own = ({ loss }: DeepAnalysis): number => loss?.value ?? 0;
  // What is worse whoever the others are comes before what is that only among some.
  const lasts = ({ robustness }: DeepAnalysis): number =>
    Number(!Object.values(robustness?.verdicts ?? {}).some((told) => !ORDER.some((worse) => worse === told)));
  return analyses.toSorted((a, b) => lasts(b) - lasts(a) || own(b) - own(a)).slice(0, 1);
}

/** Costly against nobody is not costly. */
function verdictIn({ verdict, robustness }: DeepAnalysis): Verdict {
  if (verdict !== 'costly' || robustness === undefined) return verdict;
  const { casual, typical, strong } = robustness.verdicts;
  const worst = (['costly', 'a-little-worse'] as const).find((one) =>
    [casual, typical, strong].includes(one),
  );
  return worst ?? 'cant-say';
}
