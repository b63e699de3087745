// The teacher's dashboard: the code to join with, the controls, the players one by one, and the big screen.
import { useSignal } from '@preact/signals';
import { useEffect, useState } from 'preact/hooks';
import { classPath, type Dashboard, dashboardSchema } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { noteClass } from '../../storage/history/teaching.ts';
import { Bar } from '../../ui/bar.tsx';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import { KeyPanel } from '../keys/key-panel.tsx';
import { classDrill } from '../model/class-drill.ts';
import { asSeen, type Dispatch, sendAction } from '../model/requests.ts';
import { CLASS, TEACHING } from '../model/strings.ts';
import { useUpdates } from '../model/use-updates.ts';
import { SaveStoredDrill } from '../prepare/save-stored-drill.tsx';
import { ControlsPanel } from './controls-panel.tsx';
import { GuidedPanel } from './guided-panel.tsx';
import { JoinPanel } from './join-panel.tsx';
import { PlayerList } from './player-list.tsx';
import { PresentationPanel } from './presentation-panel.tsx';
import { DASHBOARD } from './strings.ts';

export function DashboardScreen({ app, code }: { readonly app: App; readonly code: string }) {
  const { value, problem, at } = useUpdates(classPath(code, 'dashboard'), dashboardSchema);
  const rejected = useSignal<string | null>(null);
  const dispatch: Dispatch = (action) => {
    rejected.value = null;
    const seen = value === null ? action : asSeen(action, value);
    void sendAction(code, seen).then((answer) => {
      if (!answer.ok) rejected.value = answer.message;
    });
  };
  const title = value?.title;
  useEffect(() => {
    if (title !== undefined) void noteClass(code, { title }, Date.now());
  }, [code, title]);
  return (
    <>
      <Bar app={app} home />
      <main class="class-page">
        {value === null ? (
          <p role="status">{problem ?? CLASS.opening}</p>
        ) : (
          <>
            <h1>{value.title}</h1>
            <p class="notice" role="alert">
              {rejected.value ?? problem}
            </p>
            <Panels app={app} dashboard={value} at={at} dispatch={dispatch} />
          </>
        )}
      </main>
    </>
  );
}

interface PanelsProps {
  readonly app: App;
  readonly dashboard: Dashboard;
  /** When the dashboard was last updated, in milliseconds of the page's own clock. */
  readonly at: number;
  readonly dispatch: Dispatch;
}

function Panels({ app, dashboard, at, dispatch }: PanelsProps) {
  const { code, address, dealt, guidedDeal, ended } = dashboard;
  const joining = <JoinPanel code={code} address={address} />;
  const controls = <ControlsPanel dashboard={dashboard} dispatch={dispatch} />;
  const presentation = <PresentationPanel key={dealt} dashboard={dashboard} dispatch={dispatch} />;
  const guided =
    guidedDeal && !ended ? (
      <GuidedPanel dashboard={dashboard} guidedDeal={guidedDeal} dispatch={dispatch} />
    ) : null;
  const started = dealt > 0;
  // Until the first deal the code comes first; from then on what is talked about, with the choice and the way on beside it.
  return (
    <>
      <div class="class-columns">
        {started ? presentation : joining}
        <div class="class-column">
          {guided}
          {controls}
        </div>
      </div>
      <PlayerList dashboard={dashboard} at={at} dispatch={dispatch} />
      {started ? joining : presentation}
      <KeyPanel dashboard={dashboard} dispatch={dispatch} />
      <EndPanel app={app} dashboard={dashboard} dispatch={dispatch} />
    </>
  );
}

function EndPanel({ app, dashboard, dispatch }: Omit<PanelsProps, 'at'>) {
  const report = { kind: 'class', code: dashboard.code, part: 'report' } as const;
  return (
    <section class="row">
      <PageLink app={app} route={report} button>
        {DASHBOARD.report}
      </PageLink>
      <SaveDrill code={dashboard.code} />
      <PageLink app={app} route={{ kind: 'teaching' }}>
        {TEACHING.title}
      </PageLink>
      {dashboard.ended ? (
        <p>{CLASS.ended}</p>
      ) : (
        <ConfirmButton
          name={DASHBOARD.end}
          yes={DASHBOARD.endSure}
          no={DASHBOARD.endNot}
          onYes={() => dispatch({ kind: 'end' })}
        />
      )}
    </section>
  );
}

function SaveDrill({ code }: { readonly code: string }) {
  const [text, setText] = useState<string | null>(null);
  useEffect(() => {
    void classDrill(code).then(setText);
  }, [code]);
  return text === null ? null : <SaveStoredDrill words={DASHBOARD.saveDrill} text={text} ownCard={null} />;
}
