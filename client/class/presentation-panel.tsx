// What the teacher puts on the wall: a step, first its rack, then its choices.
import { useSignal } from '@preact/signals';
import { type Dashboard, type ShownStep, STEPS } from '../../shared-engine/index.ts';
import { pathOf } from '../app/routes/route.ts';
import type { Act } from './action.ts';
import { DESK, stepName } from './strings.ts';

interface TalkPanelProps {
  readonly desk: Dashboard;
  readonly act: Act;
}

type Topic = Pick<ShownStep, 'seat' | 'step' | 'kind'>;

/** The pass that is open now comes first in a round, before anybody has it behind them. */
const FIRST: Topic = { seat: 0, step: STEPS[0], kind: 'pass' };

export function TalkPanel({ desk, act }: TalkPanelProps) {
  const { shown, spreads, dealt, code, form } = desk;
  const chosen = useSignal('');
  const topics = topicsOf(spreads);
  const topic = topics.find((one) => keyOf(one) === chosen.value) ?? topics.at(-1) ?? FIRST;
  const put = (revealed: boolean) => act({ kind: 'show', choice: { ...topicOf(topic), revealed } });
  return (
    <section class="talk" aria-labelledby="talk-title">
      <h2 id="talk-title">{DESK.talk}</h2>
      <p>{DESK.talkAbout}</p>
      <p>
        <a
          class="button"
          href={pathOf({ kind: 'class', code, part: 'wall' })}
          target="_blank"
          rel="noreferrer"
        >
          {DESK.wall}
        </a>
      </p>
      {dealt > 0 && (
        <div class="row">
          <div class="field">
            <label for="topic">{DESK.which}</label>
            <select
              id="topic"
              value={keyOf(topic)}
              onChange={(event) => {
                chosen.value = event.currentTarget.value;
              }}
            >
              {topics.map((one) => (
                <option key={keyOf(one)} value={keyOf(one)}>
                  {form === 'tables' ? `${one.seat + 1}: ${stepName(one)}` : stepName(one)}
                </option>
              ))}
            </select>
          </div>
          <button type="button" onClick={() => put(false)}>
            {DESK.put}
          </button>
          {shown && (
            <>
              <button
                type="button"
                class={shown.revealed ? '' : 'primary'}
                onClick={() => act({ kind: 'show', choice: { ...shown, revealed: !shown.revealed } })}
              >
                {shown.revealed ? DESK.hide : DESK.reveal}
              </button>
              <button type="button" onClick={() => act({ kind: 'show', choice: null })}>
                {DESK.clear}
              </button>
            </>
          )}
        </div>
      )}
    </section>
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
