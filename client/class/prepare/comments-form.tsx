// What the teacher chose at a step of a deal and says of it; players of a published drill read it after their own choice.
import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useMemo, useRef } from 'preact/hooks';
import {
  arrivalProblem,
  bagOf,
  type CardFile,
  DRILL_LIMITS,
  type Drill,
  type DrillDeal,
  drillTerms,
  hasStep,
  lessonSoFar,
  MOVE_STEPS,
  PASS_SIZE,
  STEPS,
  type Step,
} from '../../../shared-engine/index.ts';
import { capitalize } from '../../tiles/tile-names.ts';
import { TilePicker } from '../../tiles/tile-picker.tsx';
import { FullNote } from '../../ui/full-note.tsx';
import { stepTitle } from '../model/strings.ts';
import { kernelOf } from './deal-tasks.ts';
import { withArrival, withComment } from './draft.ts';
import { OwnChoice } from './own-choice.tsx';
import { COMMENTS } from './strings.ts';

interface CommentsFormProps {
  readonly id: string;
  readonly deal: DrillDeal;
  readonly bots: Drill['bots'];
  readonly ways: Drill['ways'];
  /** Null for the house card. */
  readonly card: CardFile | null;
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

function Comments({ id, deal, bots, ways, card, onChange }: CommentsFormProps) {
  const step = useSignal<Step>(STEPS[0]);
  const at = step.value;
  const list = useRef<HTMLSelectElement>(null);
  const kernel = useMemo(() => kernelOf(card), [card]);
  // Not played anew for each letter of the words.
  const soFar = useMemo(
    () => lessonSoFar({ bots, ...(ways && { ways }) }, deal, kernel),
    [JSON.stringify([{ ...deal, comments: choicesIn(deal) }, bots, ways]), kernel],
  );
  const place = soFar?.moments.findIndex((one) => one.step === at) ?? -1;
  const next = soFar?.moments[place + 1]?.step;
  const comment = deal.comments?.[at] ?? {};
  const terms = drillTerms(ways === undefined ? {} : { ways });
  const steps = STEPS.filter((one) => hasStep(one, terms));
  return (
    <div class="comments">
      <p class="aside">{COMMENTS.about}</p>
      <div class="field">
        <label for={`${id}-comment-step`}>{COMMENTS.step}</label>
        <select
          ref={list}
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
      {soFar && place < 0 && <p class="aside">{capitalize(soFar.whyNot(at))}</p>}
      <OwnChoice
        key={at}
        id={id}
        step={at}
        moment={soFar?.moments[place] ?? null}
        chosen={comment.chosen}
        onChosen={(chosen) => onChange(withComment(deal, at, { words: comment.words, chosen }))}
      />
      <div class="field">
        <label for={`${id}-comment-words`}>{COMMENTS.words}</label>
        <textarea
          id={`${id}-comment-words`}
          rows={3}
          maxLength={DRILL_LIMITS.note}
          aria-describedby={`${id}-comment-fits`}
          value={comment.words ?? ''}
          onInput={(event) =>
            onChange(withComment(deal, at, { chosen: comment.chosen, words: event.currentTarget.value }))
          }
        />
        <p id={`${id}-comment-fits`} class="aside">
          {COMMENTS.fits(comment.words?.length ?? 0)}
        </p>
        <FullNote text={comment.words ?? ''} most={DRILL_LIMITS.note} />
      </div>
      {deal.tiles.kind === 'manual' && (
        <Arrival key={`arrival ${at}`} deal={deal} at={at} onChange={onChange} />
      )}
      {place >= 0 && next && (
        <div class="row">
          <button
            type="button"
            onClick={() => {
              step.value = next;
              list.current?.focus();
            }}
          >
            {COMMENTS.next(stepTitle(next))}
          </button>
        </div>
      )}
    </div>
  );
}

function choicesIn({ comments = {} }: DrillDeal) {
  return STEPS.map((step) => comments[step]?.chosen ?? null);
}

const NOTHING_HELD = bagOf([]);

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
