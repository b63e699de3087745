// What the teacher chose and says, and how others chose, at the steps at which the player has chosen.
import type { PublishedDeal, ReleasedDeal, Step } from '../../../shared-engine/index.ts';
import { optionName } from '../../room/step-names.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { choiceTitle, stepTitle } from '../model/strings.ts';
import { SpreadPicture } from '../results/spread-picture.tsx';
import { DRILL } from './strings.ts';

interface ComparisonProps {
  readonly steps: readonly Step[];
  /** Whether it is shown without being asked for. */
  readonly isOpen: boolean;
  readonly comments: PublishedDeal['comments'];
  readonly released: ReleasedDeal | null;
  /** Whether players give a name; then every choice is told as it comes. */
  readonly names: boolean;
}

export function Comparison({ steps, isOpen, comments, released, names }: ComparisonProps) {
  const [last] = steps;
  if (last === undefined) return null;
  const name = isOpen ? DRILL.compare : `${stepTitle(last)}: ${DRILL.compare.toLowerCase()}`;
  return (
    <details class="published-comparison" open={isOpen}>
      <summary>{name}</summary>
      {released?.through != null && <p>{DRILL.through(released.through)}</p>}
      {steps.map((step) => (
        <section key={step} aria-label={stepTitle(step)}>
          <h3>{stepTitle(step)}</h3>
          <TeacherComment comment={comments?.[step]} step={step} />
          <Spreads step={step} released={released} names={names} />
        </section>
      ))}
    </details>
  );
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
      {typeof chosen === 'object' && <TileRow tiles={chosen} />} {words && <span class="task">{words}</span>}
    </p>
  );
}

type SpreadsProps = Pick<ComparisonProps, 'released' | 'names'> & { readonly step: Step };

function Spreads({ step, released, names }: SpreadsProps) {
  if (released === null || released.through === null) {
    return <p>{names ? DRILL.noneYet : DRILL.notYet}</p>;
  }
  const spreads = released.steps.filter((spread) => spread.step === step);
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
