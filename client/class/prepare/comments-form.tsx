// What the teacher chose at a step of a deal and says of it; players of a published drill read it after their own choice.
import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import {
  arrivalProblem,
  bagOf,
  type Drill,
  type DrillDeal,
  drillTerms,
  hasStep,
  MOVE_STEPS,
  PASS_SIZE,
  STEPS,
  type Step,
} from '../../../shared-engine/index.ts';
import { optionName } from '../../room/step-names.ts';
import { TilePicker } from '../../tiles/tile-picker.tsx';
import { stepTitle } from '../model/strings.ts';
import { withArrival, withComment } from './draft.ts';
import { COMMENTS } from './strings.ts';

interface CommentsFormProps {
  readonly id: string;
  readonly deal: DrillDeal;
  readonly ways: Drill['ways'];
  readonly onChange: (deal: DrillDeal) => void;
}

export function CommentsForm(props: CommentsFormProps) {
  return <Folded summary={COMMENTS.title}>{() => <Comments {...props} />}</Folded>;
}

interface FoldedProps {
  readonly summary: string;
  readonly children: () => ComponentChildren;
}

/** What it holds is drawn once it is opened: each deal would bring a whole set of tiles. */
function Folded({ summary, children }: FoldedProps) {
  const isOpen = useSignal(false);
  return (
    <details
      onToggle={(event) => {
        isOpen.value = event.currentTarget.open;
      }}
    >
      <summary>{summary}</summary>
      {isOpen.value && children()}
    </details>
  );
}

function Comments({ id, deal, ways, onChange }: CommentsFormProps) {
  const step = useSignal<Step>(STEPS[0]);
  const at = step.value;
  const comment = deal.comments?.[at] ?? {};
  const terms = drillTerms(ways === undefined ? {} : { ways });
  const steps = STEPS.filter((one) => hasStep(one, terms));
  return (
    <>
      <p class="aside">{COMMENTS.about}</p>
      <div class="field">
        <label for={`${id}-comment-step`}>{COMMENTS.step}</label>
        <select
          id={`${id}-comment-step`}
          value={at}
          onChange={(event) => {
            step.value = steps.find((one) => one === event.currentTarget.value) ?? at;
          }}
        >
          {steps.map((one) => (
            <option key={one} value={one}>
              {stepTitle(one)}
              {deal.comments?.[one] && ` ${COMMENTS.has}`}
            </option>
          ))}
        </select>
      </div>
      <OwnChoice
        key={at}
        id={id}
        step={at}
        chosen={comment.chosen}
        onChosen={(chosen) => onChange(withComment(deal, at, { words: comment.words, chosen }))}
      />
      <div class="field">
        <label for={`${id}-comment-words`}>{COMMENTS.words}</label>
        <textarea
          id={`${id}-comment-words`}
          rows={3}
          maxLength={600}
          value={comment.words ?? ''}
          onInput={(event) =>
            onChange(withComment(deal, at, { chosen: comment.chosen, words: event.currentTarget.value }))
          }
        />
      </div>
      {deal.tiles.kind === 'manual' && (
        <Arrival key={`arrival ${at}`} deal={deal} at={at} onChange={onChange} />
      )}
    </>
  );
}

interface ArrivalProps extends Pick<CommentsFormProps, 'deal' | 'onChange'> {
  readonly at: Step;
}

/** What the pass of this step brings, where the teacher wants it to be the same for everybody (rule T3). */
function Arrival({ deal, at, onChange }: ArrivalProps) {
  const step = MOVE_STEPS.find((one) => one === at);
  if (step === undefined) return null;
  return (
    <Folded summary={COMMENTS.arrival}>
      {() => (
        <>
          <p class="aside">{COMMENTS.arrivalAbout}</p>
          <TilePicker
            title={COMMENTS.arrival}
            laid={deal.scripted?.arrivals[step] ?? []}
            size={PASS_SIZE}
            problemWith={(next) => arrivalProblem(NOTHING_HELD, next, next.length)}
            onChange={(laid) => onChange(withArrival(deal, step, laid))}
          />
        </>
      )}
    </Folded>
  );
}

type Chosen = NonNullable<NonNullable<DrillDeal['comments']>[Step]>['chosen'];

interface OwnChoiceProps {
  readonly id: string;
  readonly step: Step;
  readonly chosen: Chosen;
  readonly onChosen: (chosen: Chosen) => void;
}

const NOTHING_HELD = bagOf([]);
const NUMBERS: { readonly [At in Step]?: readonly number[] } = { vote: [1, 0], 'courtesy-ask': [0, 1, 2, 3] };

function OwnChoice({ id, step, chosen, onChosen }: OwnChoiceProps) {
  const numbers = NUMBERS[step];
  if (numbers === undefined) {
    return (
      <TilePicker
        title={COMMENTS.tiles}
        laid={typeof chosen === 'object' ? chosen : []}
        size={PASS_SIZE}
        problemWith={(next) => arrivalProblem(NOTHING_HELD, next, next.length)}
        onChange={(laid) => onChosen(laid.length === 0 ? undefined : laid)}
      />
    );
  }
  return (
    <div class="field">
      <label for={`${id}-comment-choice`}>{COMMENTS.choice}</label>
      <select
        id={`${id}-comment-choice`}
        value={String(chosen ?? '')}
        onChange={(event) => onChosen(numbers.find((one) => String(one) === event.currentTarget.value))}
      >
        <option value="">{COMMENTS.none}</option>
        {numbers.map((one) => (
          <option key={one} value={one}>
            {optionName(step === 'vote' ? 'vote' : 'ask', one)}
          </option>
        ))}
      </select>
    </div>
  );
}
