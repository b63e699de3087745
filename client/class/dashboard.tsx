// The teacher's desk: the way in, the deals, the hold, the players one by one, and what is on the wall.
import { useSignal } from '@preact/signals';
import { classLink, classPath, type Dashboard, dashboardSchema } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import { pathOf } from '../app/routes/route.ts';
import { ROOM } from '../room/strings.ts';
import { Bar } from '../ui/bar.tsx';
import { AskedTwice } from '../ui/confirm-button.tsx';
import { goInPage } from '../ui/in-page-link.ts';
import { Scan } from '../ui/qr-picture.tsx';
import type { Act } from './action.ts';
import { LeadPanel } from './controls-panel.tsx';
import { LinePanel } from './guided-panel.tsx';
import { PlayerList } from './player-list.tsx';
import { TalkPanel } from './presentation-panel.tsx';
import { actIn } from './requests.ts';
import { DESK } from './strings.ts';
import { type News, useNews } from './use-updates.ts';

export function TeacherDesk({ app, code }: { readonly app: App; readonly code: string }) {
  const news = useNews(classPath(code, 'dashboard'), dashboardSchema);
  const problem = useSignal<string | null>(null);
  const act: Act = (what) => {
    problem.value = null;
    void actIn(code, what).then((answer) => {
      if (!answer.ok) problem.value = answer.sentence;
    });
  };
  const { value } = news;
  return (
    <>
      <Bar app={app} home />
      <main class="desk">
        {value === null ? (
          <p role="status">{news.problem ?? ROOM.opening}</p>
        ) : (
          <>
            <h1>{value.title}</h1>
            <p class="notice" role="alert">
              {problem.value ?? news.problem}
            </p>
            <Parts app={app} desk={value} news={news} act={act} />
          </>
        )}
      </main>
    </>
  );
}

interface PartsProps {
  readonly app: App;
  readonly desk: Dashboard;
  readonly news: News<Dashboard>;
  readonly act: Act;
}

function Parts({ app, desk, news, act }: PartsProps) {
  const { code, dealt, guidedDeal, ended } = desk;
  const wayIn = <WayIn link={app.linkTo({ kind: 'class', code, part: 'main' })} code={code} />;
  const lead = <LeadPanel desk={desk} act={act} />;
  const talk = <TalkPanel key={dealt} desk={desk} act={act} />;
  const lined = guidedDeal && !ended ? <LinePanel desk={desk} line={guidedDeal} act={act} /> : null;
  const began = dealt > 0;
  // Until the first deal the code comes first; from then on what the teacher does next.
  return (
    <>
      <div class="desk-columns">
        {began ? lead : wayIn}
        {began ? (lined ?? talk) : lead}
      </div>
      <PlayerList desk={desk} at={news.at} act={act} />
      {(!began || lined) && talk}
      {began && wayIn}
      <Ending app={app} desk={desk} act={act} />
    </>
  );
}

function WayIn({ link, code }: { readonly link: string; readonly code: string }) {
  return (
    <section class="way-in" aria-labelledby="code-title">
      <div>
        <h2 id="code-title">{DESK.code}</h2>
        <p class="big-code" data-code={code}>
          {[...code].join(' ')}
        </p>
        <p>{DESK.codeAbout}</p>
        <p>
          <a href={classLink(code)}>{link}</a>
        </p>
      </div>
      <Scan link={link} />
    </section>
  );
}

function Ending({ app, desk, act }: Omit<PartsProps, 'news'>) {
  const report = { kind: 'class', code: desk.code, part: 'report' } as const;
  return (
    <section class="row ending">
      <a class="button" href={pathOf(report)} onClick={(event) => goInPage(event, () => app.go(report))}>
        {DESK.report}
      </a>
      {desk.ended ? (
        <p>{DESK.ended}</p>
      ) : (
        <AskedTwice name={DESK.end} yes={DESK.endSure} no={DESK.endNot} onYes={() => act({ kind: 'end' })} />
      )}
    </section>
  );
}
