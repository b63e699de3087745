// What the teacher chose and says, and how others chose, at the steps at which the player has chosen.
import type { PublishedDeal, ReleasedDeal, Step } from '../../../shared-engine/index.ts';
import { optionName } from '../../room/step-names.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { TileText } from '../../tiles/tile-text.tsx';
import { choiceTitle, stepTitle } from '../model/strings.ts';
import { SpreadPicture } from '../results/spread-picture.tsx';
import { DRILL } from './strings.ts';

interface ComparisonProps {
  readonly steps: readonly Step[];
  readonly comments: PublishedDeal['comments'];
  readonly released: ReleasedDeal | null;
  /** Whether players give a name; then every choice is told as it comes. */
  readonly names: boolean;
  /** Whether more rounds may come in. */
  readonly isOpen: boolean;
}

/** Folded, so that it covers neither the table nor the review; what is true of every step is said once. */
export function Comparison({ steps, comments, released, names, isOpen }: ComparisonProps) {
  if (steps.length === 0) return null;
  const compare = steps.some((step) => comments?.[step]) ? DRILL.compareAndTeacher : DRILL.compare;
  const spreadsAt = (step: Step) => released?.steps.filter((spread) => spread.step === step) ?? [];
  const nothing = nothingToShow(released, { names, isOpen });
  return (
    <details class="published-comparison">
      <summary>{steps.length === 1 ? `${stepTitle(steps[0]!)}: ${inSentence(compare)}` : compare}</summary>
      {released?.through != null && <p>{DRILL.through(released.through)}</p>}
      {nothing && <p>{nothing}</p>}
      {steps
        .filter((step) => nothing === null || comments?.[step])
        .map((step) => (
          <section key={step} aria-label={stepTitle(step)}>
            <h3>{stepTitle(step)}</h3>
            <TeacherComment comment={comments?.[step]} step={step} />
            {nothing === null && <Spreads spreads={spreadsAt(step)} />}
          </section>
        ))}
    </details>
  );
}

function inSentence(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

/** Why no choice of others can be shown at any step; null where some can. */
function nothingToShow(
  released: ReleasedDeal | null,
  { names, isOpen }: Pick<ComparisonProps, 'names' | 'isOpen'>,
): string | null {
  if (released !== null && released.through !== null) {
    return released.steps.length === 0 ? DRILL.nothingAnywhere : null;
  }
  if (!isOpen) return DRILL.tooFewPlayed;
  return names ? DRILL.noneYet : DRILL.notYet;
}

interface TeacherCommentProps {
  readonly step: Step;
  readonly comment: NonNullable<PublishedDeal['comments']>[Step];
}

function TeacherComment({ step, comment }: TeacherCommentProps) {
  if (comment === undefined) return null;
  const { chosen, words } = comment;
  return (
    <p class="teacher-comment">
      <b>{DRILL.teacher}:</b>{' '}
      {typeof chosen === 'number' && optionName(step === 'vote' ? 'vote' : 'ask', chosen)}
      {typeof chosen === 'object' && <TileRow tiles={chosen} />}{' '}
      {words && (
        <span class="task">
          <TileText text={words} />
        </span>
      )}
    </p>
  );
}

function Spreads({ spreads }: { readonly spreads: ReleasedDeal['steps'] }) {
  if (spreads.length === 0) return <p>{DRILL.nothing}</p>;
  return (
    <>
      {spreads.map((spread) => (
        <div key={spread.kind}>
          {spread.kind === 'blind' && <h4>{choiceTitle(spread)}</h4>}
          <SpreadPicture spread={spread} />
        </div>
      ))}
    </>
  );
}
