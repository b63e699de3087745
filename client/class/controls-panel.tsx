// How the teacher leads: the next deal, the hold before a step, more time.
import { type Dashboard, STEPS, type Step } from '../../shared-engine/index.ts';
import type { Act } from './action.ts';
import { DESK, stepTitle } from './strings.ts';

/** What the button for more time gives, in seconds. */
export const MORE_SECONDS = 30;

interface LeadPanelProps {
  readonly desk: Dashboard;
  readonly act: Act;
}

export function LeadPanel({ desk, act }: LeadPanelProps) {
  const { dealt, deals, ended, terms } = desk;
  const current = deals[dealt - 1];
  const more = dealt < deals.length;
  const lineOpen = desk.guidedDeal !== null && desk.guidedDeal.step !== null;
  return (
    <section class="lead" aria-label={DESK.lead}>
      <p class="deal-now">
        <b>{dealt === 0 ? DESK.notDealt(deals.length) : DESK.dealNumber(dealt, deals.length)}</b>
        {current?.title && <span> {current.title}</span>}
      </p>
      {current?.note && <p class="aside">{current.note}</p>}
      {!ended && (
        <>
          {more ? (
            <button
              type="button"
              class={lineOpen ? '' : 'primary'}
              onClick={() => act({ kind: 'deal-next' })}
            >
              {dealt === 0 ? DESK.first : DESK.next}
            </button>
          ) : (
            <p>{DESK.noMore}</p>
          )}
          <Hold desk={desk} act={act} />
          {terms.deadline !== null && dealt > 0 && (
            <button
              type="button"
              onClick={() => act({ kind: 'more-time', player: null, seconds: MORE_SECONDS })}
            >
              {DESK.time}
            </button>
          )}
        </>
      )}
    </section>
  );
}

function Hold({ desk: { holdBefore, players }, act }: LeadPanelProps) {
  const waiting = players.filter(({ held }) => held).length;
  const next = holdBefore === null ? undefined : STEPS[STEPS.indexOf(holdBefore) + 1];
  return (
    <div class="hold">
      <div class="field">
        <label for="hold">{DESK.hold}</label>
        <select
          id="hold"
          value={holdBefore ?? ''}
          onChange={(event) => act({ kind: 'hold', before: stepNamed(event.currentTarget.value) })}
        >
          <option value="">{DESK.noHold}</option>
          {STEPS.map((step) => (
            <option key={step} value={step}>
              {stepTitle(step)}
            </option>
          ))}
        </select>
      </div>
      {holdBefore !== null && (
        <>
          <p role="status">{DESK.waitThere(waiting, stepTitle(holdBefore))}</p>
          <div class="row">
            {next && (
              <button type="button" class="primary" onClick={() => act({ kind: 'hold', before: next })}>
                {DESK.goOnTo(stepTitle(next))}
              </button>
            )}
            <button type="button" onClick={() => act({ kind: 'hold', before: null })}>
              {DESK.goOn}
            </button>
          </div>
        </>
      )}
    </div>
  );
}

function stepNamed(text: string): Step | null {
  return STEPS.find((step) => step === text) ?? null;
}
