// The page of a published drill's teacher: link and last day, who is through, what to talk about, questions, the report.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import {
  type DrillReport,
  drillLink,
  type PublishedDashboard,
  type PublishedDrill,
  teacherLink,
} from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { CopyLink } from '../../room/copy-link.tsx';
import { Bar } from '../../ui/bar.tsx';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import { AddressForm, useReachable } from '../keys/address-form.tsx';
import { TeacherKeys } from '../keys/key-panel.tsx';
import { dateAt, stepTitle } from '../model/strings.ts';
import { DealReport } from '../results/report-screen.tsx';
import { ReportTools } from '../results/report-tools.tsx';
import { Divided } from './divided.tsx';
import { LastDayField } from './last-day.tsx';
import { fetchDrillDashboard, fetchDrillReport, makeDrillKey, sendDrillAction } from './requests.ts';
import { DRILL, TEACHER } from './strings.ts';

interface TeacherPageProps {
  readonly app: App;
  readonly drill: PublishedDrill;
  readonly onChanged: () => void;
}

interface Known {
  readonly dashboard: PublishedDashboard;
  readonly report: DrillReport;
}

export function TeacherPage({ app, drill: { code, title }, onChanged }: TeacherPageProps) {
  const known = useSignal<Known | null>(null);
  const problem = useSignal<string | null>(null);
  const dayProblem = useSignal<string | null>(null);
  async function look() {
    const [dashboard, report] = await Promise.all([fetchDrillDashboard(code), fetchDrillReport(code)]);
    const failed = dashboard.ok ? (report.ok ? null : report) : dashboard;
    problem.value = failed?.message ?? null;
    if (dashboard.ok && report.ok) known.value = { dashboard: dashboard.value, report: report.value };
    // A key may have been taken back.
    if (failed?.code === 'not-the-teacher') onChanged();
  }
  useEffect(() => {
    const again = () => void look();
    again();
    document.addEventListener('visibilitychange', again);
    return () => document.removeEventListener('visibilitychange', again);
  }, [code]);
  async function act(action: Parameters<typeof sendDrillAction>[1]) {
    const answer = await sendDrillAction(code, action);
    await look();
    const isDayWrong = !answer.ok && answer.code === 'bad-last-day';
    dayProblem.value = isDayWrong ? answer.message : null;
    if (!answer.ok && !isDayWrong) problem.value = answer.message;
  }
  return (
    <>
      <Bar app={app} home />
      <main class="class-page published">
        <h1>{title}</h1>
        <p class="notice" role="alert">
          {problem.value}
        </p>
        {known.value === null ? (
          <p role="status">{DRILL.opening}</p>
        ) : (
          <Parts
            app={app}
            known={known.value}
            dayProblem={dayProblem.value}
            act={(action) => void act(action)}
            onLook={() => void look()}
          />
        )}
      </main>
    </>
  );
}

interface PartsProps {
  readonly app: App;
  readonly known: Known;
  readonly dayProblem: string | null;
  readonly act: (action: Parameters<typeof sendDrillAction>[1]) => void;
  readonly onLook: () => void;
}

function Parts({ app, known: { dashboard, report }, dayProblem, act, onLook }: PartsProps) {
  const { code, title, state, until, keptDays, address } = dashboard;
  const { reachable, own, lookAgain } = useReachable(address);
  const link = `${reachable ?? own}${drillLink(code)}`;
  return (
    <>
      <p role="status">{state === 'open' ? TEACHER.open(until) : TEACHER.states[state]}</p>
      {state === 'open' && (
        <section aria-label={TEACHER.link}>
          <CopyLink link={link} label={TEACHER.link} copied={TEACHER.linkCopied} />
          {address === null && reachable !== own && <AddressForm address={reachable} onChange={lookAgain} />}
          <div class="field">
            <label for="message-text">{TEACHER.message}</label>
            <textarea
              id="message-text"
              readOnly
              rows={6}
              value={TEACHER.messageText(title, until, link)}
              onFocus={(event) => event.currentTarget.select()}
            />
          </div>
        </section>
      )}
      {state !== 'withdrawn' && (
        <section aria-label={TEACHER.howLong}>
          <LastDayField
            until={until}
            problem={dayProblem}
            onDay={(day) => act({ kind: 'extend', until: day })}
          />
          <div class="row">
            <ConfirmButton
              name={TEACHER.withdraw}
              yes={TEACHER.withdrawYes}
              no={TEACHER.withdrawNot}
              about={TEACHER.withdrawAbout}
              onYes={() => act({ kind: 'withdraw' })}
            />
          </div>
        </section>
      )}
      <Through dashboard={dashboard} onLook={onLook} />
      <Divided app={app} dashboard={dashboard} report={report} />
      <Questions dashboard={dashboard} />
      <section class="report" aria-labelledby="drill-report">
        <h2 id="drill-report">{TEACHER.report}</h2>
        <ReportTools report={report} date={dateAt(Date.now())} />
        {report.deals.map((deal, place) => (
          <DealReport key={deal.deal} deal={deal} number={place + 1} anonymous={report.anonymous} />
        ))}
      </section>
      <Keys dashboard={dashboard} act={act} />
      <p class="aside">{TEACHER.kept(keptDays)}</p>
    </>
  );
}

function Through({
  dashboard,
  onLook,
}: Pick<PartsProps, 'onLook'> & { readonly dashboard: PublishedDashboard }) {
  const isOver = dashboard.state === 'withdrawn';
  const nobody = isOver ? TEACHER.nobody : TEACHER.nobodyYet;
  return (
    <section aria-labelledby="drill-through">
      <h2 id="drill-through">{TEACHER.who}</h2>
      <ul>
        {dashboard.deals.map(({ id, title, through, names }, place) => (
          <li key={id}>
            {DRILL.deal(place + 1, title)}:{' '}
            {dashboard.terms.names ? names.join(', ') || nobody : TEACHER.through(through, isOver)}
          </li>
        ))}
      </ul>
      {!isOver && (
        <div class="row">
          <button type="button" onClick={onLook}>
            {TEACHER.again}
          </button>
        </div>
      )}
    </section>
  );
}

function Questions({ dashboard: { deals, terms, state } }: { readonly dashboard: PublishedDashboard }) {
  const asked = deals.flatMap(({ id, title, questions }, place) =>
    questions.map(({ step, text }, nth) => ({
      key: `${id} ${nth}`,
      at: DRILL.deal(place + 1, title),
      step,
      text,
    })),
  );
  const noQuestionsKind = state === 'withdrawn' ? 'withdrawn' : terms.names ? 'names' : 'counts';
  return (
    <section aria-labelledby="drill-questions">
      <h2 id="drill-questions">{TEACHER.questions}</h2>
      {asked.length === 0 && <p>{TEACHER.noQuestions[noQuestionsKind]}</p>}
      <ul>
        {asked.map(({ key, at, step, text }) => (
          <li key={key}>
            <span class="aside">
              {at}, {stepTitle(step)}
            </span>{' '}
            <span class="task">{text}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Keys({
  dashboard: { code, title, keys, address },
  act,
}: Pick<PartsProps, 'act'> & Pick<Known, 'dashboard'>) {
  const { reachable, own } = useReachable(address);
  return (
    <section class="key-panel" aria-labelledby="drill-keys">
      <h2 id="drill-keys">{TEACHER.keys}</h2>
      <p>{TEACHER.keysAbout}</p>
      <TeacherKeys
        title={title}
        keys={keys}
        make={() => makeDrillKey(code)}
        linkOf={(key) => teacherLink(`${reachable ?? own}${drillLink(code)}`, key)}
        onRevoke={(key) => act({ kind: 'revoke-key', key })}
      />
    </section>
  );
}
