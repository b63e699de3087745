// What the teacher puts on the big screen: one step, first its rack, then its choices; shown here as it is shown there.
import { useSignal } from '@preact/signals';
import {
  bigScreenSchema,
  classPath,
  type Dashboard,
  type ShownStep,
  STEPS,
} from '../../../shared-engine/index.ts';
import { pathOf } from '../../app/routes/route.ts';
import type { Dispatch } from '../model/requests.ts';
import { CLASS, choiceTitle } from '../model/strings.ts';
import { useUpdates } from '../model/use-updates.ts';
import { StepView } from '../results/step-view.tsx';
import { PRESENTATION } from './strings.ts';

interface PresentationPanelProps {
  readonly dashboard: Dashboard;
  readonly dispatch: Dispatch;
}

type Topic = Pick<ShownStep, 'seat' | 'step' | 'kind'>;

/** The first pass is offered before anybody has made it. */
const FIRST: Topic = { seat: 0, step: STEPS[0], kind: 'pass' };

export function PresentationPanel({ dashboard, dispatch }: PresentationPanelProps) {
  const { shown, spreads, dealt, code, form } = dashboard;
  const selected = useSignal('');
  const topics = topicsOf(spreads);
  const topic = topics.find((one) => keyOf(one) === selected.value) ?? topics.at(-1) ?? FIRST;
  return (
    <section class="presentation" aria-labelledby="presentation-title">
      <h2 id="presentation-title">{PRESENTATION.title}</h2>
      {dealt > 0 && (
        <div class="row">
          <div class="field">
            <label for="topic">{PRESENTATION.step}</label>
            <select
              id="topic"
              value={keyOf(topic)}
              onChange={(event) => {
                selected.value = event.currentTarget.value;
              }}
            >
              {topics.map((one) => (
                <option key={keyOf(one)} value={keyOf(one)}>
                  {form === 'tables' && CLASS.ofSeat(one.seat)}
                  {choiceTitle(one)}
                </option>
              ))}
            </select>
          </div>
          <ShowButtons topic={topic} shown={shown} dispatch={dispatch} />
        </div>
      )}
      <p>
        <a
          class="button"
          href={pathOf({ kind: 'class', code, part: 'big-screen' })}
          target="_blank"
          rel="noreferrer"
        >
          {PRESENTATION.open}
        </a>
      </p>
      <p class="aside">{PRESENTATION.about}</p>
      {dealt > 0 && (shown ? <Mirror code={code} /> : <p class="aside">{PRESENTATION.nothing}</p>)}
    </section>
  );
}

/** The choices that are shown here; the big screen has room for no more. */
const MIRROR_ROWS = 5;

/** The big screen in small, from the same answer of the server. */
function Mirror({ code }: { readonly code: string }) {
  const { value } = useUpdates(classPath(code, 'big-screen'), bigScreenSchema);
  if (!value?.shown) return null;
  return (
    <section class="mirror" aria-label={PRESENTATION.mirror}>
      <h3>{choiceTitle(value.shown)}</h3>
      <StepView bigScreen={value} shown={value.shown} maxRows={MIRROR_ROWS} />
    </section>
  );
}

interface ShowButtonsProps {
  readonly topic: Topic;
  readonly shown: Dashboard['shown'];
  readonly dispatch: Dispatch;
}

function ShowButtons({ topic, shown, dispatch }: ShowButtonsProps) {
  const show = (next: ShownStep | null) => dispatch({ kind: 'show', shown: next });
  return (
    <>
      <button type="button" onClick={() => show({ ...topicOf(topic), revealed: false })}>
        {PRESENTATION.show}
      </button>
      {shown && (
        <>
          <button
            type="button"
            class={shown.revealed ? '' : 'primary'}
            onClick={() => show({ ...shown, revealed: !shown.revealed })}
          >
            {shown.revealed ? PRESENTATION.hide : PRESENTATION.reveal}
          </button>
          <button type="button" onClick={() => show(null)}>
            {PRESENTATION.clear}
          </button>
        </>
      )}
    </>
  );
}

function topicsOf(spreads: Dashboard['spreads']): readonly Topic[] {
  const known = spreads.some((one) => keyOf(one) === keyOf(FIRST));
  return known ? spreads : [FIRST, ...spreads];
}

function topicOf({ seat, step, kind }: Topic): Topic {
  return { seat, step, kind };
}

function keyOf({ seat, step, kind }: Topic): string {
  return `${seat} ${step} ${kind}`;
}
