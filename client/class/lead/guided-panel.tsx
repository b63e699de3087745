// A guided deal on the dashboard: whom it waits for, and then the choice that everybody continues from.
import { type Dashboard, type GuidedDeal, isAnonymous, type Step } from '../../../shared-engine/index.ts';
import { sentenceList } from '../../tiles/tile-names.ts';
import type { Dispatch } from '../model/requests.ts';
import { GuidedChoice } from './guided-choice.tsx';
import { GUIDED, stillToChoose } from './guided-strings.ts';

interface GuidedPanelProps {
  readonly dashboard: Dashboard;
  readonly guidedDeal: GuidedDeal;
  readonly dispatch: Dispatch;
}

export function GuidedPanel({ dashboard, guidedDeal, dispatch }: GuidedPanelProps) {
  const { players, dealt, terms } = dashboard;
  const { step, stepIndex, waiting } = guidedDeal;
  return (
    <section class="guided" aria-labelledby="guided-title">
      <h2 id="guided-title">{GUIDED.title}</h2>
      <p class="aside">{GUIDED.about}</p>
      {step === null ? (
        <p role="status">{GUIDED.closed}</p>
      ) : waiting > 0 || players.length === 0 ? (
        <Waiting dashboard={dashboard} step={step} dispatch={dispatch} />
      ) : (
        <GuidedChoice
          key={`${dealt} ${stepIndex}`}
          guidedDeal={guidedDeal}
          step={step}
          anonymous={isAnonymous(terms)}
          onChoose={(choice) => dispatch({ kind: 'advance', stepIndex, choice })}
        />
      )}
    </section>
  );
}

interface WaitingProps {
  readonly dashboard: Dashboard;
  readonly step: Step;
  readonly dispatch: Dispatch;
}

function Waiting({ dashboard, step, dispatch }: WaitingProps) {
  const open = stillToChoose(dashboard);
  const away = open.filter(({ present, standIn }) => !present && !standIn);
  const names = sentenceList(open.map(({ name }) => name));
  const message = open.every(({ held }) => held) ? GUIDED.held(step) : GUIDED.waitFor(step, names);
  return (
    <>
      <p role="status">{dashboard.players.length === 0 ? GUIDED.nobody : message}</p>
      {away.length > 0 && (
        <button
          type="button"
          onClick={() => {
            for (const { id } of away) dispatch({ kind: 'stand-in', player: id, on: true });
          }}
        >
          {GUIDED.botsForAway}
        </button>
      )}
    </>
  );
}
