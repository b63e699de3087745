// How the teacher controls the tables: the next deal, the step before which they stop, more time.
import { type Dashboard, STEPS, type Step } from '../../../shared-engine/index.ts';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import type { Dispatch } from '../model/requests.ts';
import { CLASS, stepTitle } from '../model/strings.ts';
import { DASHBOARD } from './strings.ts';

/** What the button for more time gives, in seconds. */
export const MORE_SECONDS = 30;

interface ControlsPanelProps {
  readonly dashboard: Dashboard;
  readonly dispatch: Dispatch;
}

export function ControlsPanel({ dashboard, dispatch }: ControlsPanelProps) {
  const { dealt, deals, joiningOpen, takeHome, form, ended, terms } = dashboard;
  const current = deals[dealt - 1];
  return (
    <section class="controls" aria-label={DASHBOARD.controls}>
      <p>
        <b>{dealt === 0 ? DASHBOARD.notStarted(deals.length) : CLASS.dealNumber(dealt, deals.length)}</b>
        {current?.title && <span> {current.title}</span>}
      </p>
      {current?.note && <p class="aside">{current.note}</p>}
      {!ended && (
        <>
          {dealt < deals.length ? (
            <StartButton dashboard={dashboard} dispatch={dispatch} />
          ) : (
            <p>{DASHBOARD.noMore}</p>
          )}
          <HoldControl dashboard={dashboard} dispatch={dispatch} />
          {terms.deadline !== null && dealt > 0 && (
            <button
              type="button"
              onClick={() => dispatch({ kind: 'more-time', player: null, seconds: MORE_SECONDS })}
            >
              {DASHBOARD.time}
            </button>
          )}
          {!joiningOpen && <p>{DASHBOARD.joiningClosed}</p>}
          <button type="button" onClick={() => dispatch({ kind: 'joining', open: !joiningOpen })}>
            {joiningOpen ? DASHBOARD.closeJoining : DASHBOARD.openJoining}
          </button>
        </>
      )}
      {form !== 'tables' && (
        <>
          <label class="choice">
            <input
              type="checkbox"
              checked={takeHome}
              aria-describedby="take-home-about"
              onChange={(event) => dispatch({ kind: 'take-home', on: event.currentTarget.checked })}
            />
            {DASHBOARD.takeHome}
          </label>
          <p class="aside" id="take-home-about">
            {DASHBOARD.takeHomeAbout}
          </p>
        </>
      )}
    </section>
  );
}

/** In the middle of a deal it asks first. */
function StartButton({ dashboard, dispatch }: ControlsPanelProps) {
  const { dealt, players } = dashboard;
  const playing = dealt === 0 ? 0 : players.filter(({ at }) => at !== 'closed' && at !== 'waiting').length;
  const start = () => dispatch({ kind: 'deal-next' });
  if (playing === 0) {
    return (
      <button type="button" class="primary" onClick={start}>
        {DASHBOARD.start(dealt + 1)}
      </button>
    );
  }
  return (
    <div class="row">
      <ConfirmButton
        key={dealt}
        name={DASHBOARD.start(dealt + 1)}
        yes={DASHBOARD.startSure(dealt + 1)}
        no={DASHBOARD.startNot}
        about={DASHBOARD.stillPlaying(playing)}
        onYes={start}
      />
    </div>
  );
}

function HoldControl({ dashboard: { holdBefore, players }, dispatch }: ControlsPanelProps) {
  const waiting = players.filter(({ held }) => held).length;
  const next = holdBefore === null ? undefined : STEPS[STEPS.indexOf(holdBefore) + 1];
  return (
    <div class="hold">
      <div class="field">
        <label for="hold">{DASHBOARD.hold}</label>
        <select
          id="hold"
          value={holdBefore ?? ''}
          onChange={(event) => dispatch({ kind: 'hold', before: stepNamed(event.currentTarget.value) })}
        >
          <option value="">{DASHBOARD.noHold}</option>
          {STEPS.map((step) => (
            <option key={step} value={step}>
              {stepTitle(step)}
            </option>
          ))}
        </select>
      </div>
      {holdBefore !== null && (
        <>
          <p role="status">{DASHBOARD.waiting(waiting, holdBefore)}</p>
          <div class="row">
            {next && (
              <button type="button" class="primary" onClick={() => dispatch({ kind: 'hold', before: next })}>
                {DASHBOARD.advanceTo(next)}
              </button>
            )}
            <button type="button" onClick={() => dispatch({ kind: 'hold', before: null })}>
              {DASHBOARD.advance}
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
