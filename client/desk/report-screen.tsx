// The report of a class: per deal the spread of every step and what cost most; per pupil what the terms allow.
import { useEffect, useState } from 'preact/hooks';
import type { ClassReport, DrillReport } from '../../shared-engine/index.ts';
import type { App } from '../model/app.ts';
import { pathOf } from '../model/route.ts';
import { Bar } from '../views/bar.tsx';
import { goInPage } from '../views/link.ts';
import { TileRow } from '../views/tile-row.tsx';
import { figure } from '../words/review.ts';
import { fileName, saveFile } from './drill-file.ts';
import { reportCsv, reportText } from './report-files.ts';
import { reportOf } from './requests.ts';
import { SpreadPicture } from './spread-picture.tsx';
import { percent, REPORT, stepName, WALL } from './words.ts';

export function ReportScreen({ app, code }: { readonly app: App; readonly code: string }) {
  const [report, setReport] = useState<DrillReport | string | null>(null);
  useEffect(() => {
    void reportOf(code).then((answer) => setReport(answer.ok ? answer.value : answer.sentence));
  }, [code]);
  const desk = { kind: 'class', code, part: 'main' } as const;
  return (
    <>
      <Bar app={app} home />
      <main class="desk report">
        {report === null || typeof report === 'string' ? (
          <p role="status">{report ?? REPORT.working}</p>
        ) : (
          <Report report={report} />
        )}
        <p class="not-printed">
          <a href={pathOf(desk)} onClick={(event) => goInPage(event, () => app.go(desk))}>
            {REPORT.drill}
          </a>
        </p>
      </main>
    </>
  );
}

function Report({ report }: { readonly report: DrillReport }) {
  const name = fileName(report.title);
  return (
    <>
      <header>
        <h1>{REPORT.title(report.title)}</h1>
        <p>{REPORT.private}</p>
      </header>
      <div class="row not-printed">
        <button type="button" class="primary" onClick={() => window.print()}>
          {REPORT.print}
        </button>
        <button type="button" onClick={() => saveFile(`${name}-report.csv`, 'text/csv', reportCsv(report))}>
          {REPORT.csv}
        </button>
        <button
          type="button"
          onClick={() => saveFile(`${name}-report.json`, 'application/json', reportText(report))}
        >
          {REPORT.json}
        </button>
      </div>
      {report.deals.length === 0 && <p>{REPORT.nothing}</p>}
      {report.deals.map((deal, place) => (
        <DealReport key={deal.deal} deal={deal} number={place + 1} />
      ))}
      {report.pupils && <ByName pupils={report.pupils} />}
    </>
  );
}

function DealReport({ deal, number }: { readonly deal: ClassReport; readonly number: number }) {
  const { title, pupils, toGoStart, toGoEnd, steps, families } = deal;
  return (
    <section class="deal-report" aria-labelledby={`deal-${number}`}>
      <h2 id={`deal-${number}`}>
        {REPORT.deal} {number}
        {title && `: ${title}`} <span class="aside">({REPORT.pupils(pupils)})</span>
      </h2>
      {toGoStart && toGoEnd && (
        <p>
          {REPORT.journey}: {figure(toGoStart.mean)} → {figure(toGoEnd.mean)}
        </p>
      )}
      <Themes deal={deal} />
      <h3>{REPORT.steps}</h3>
      {steps.map((spread) => (
        <article key={`${spread.seat}${spread.step}${spread.kind}`} class="step-report">
          <h4>{stepName(spread)}</h4>
          {spread.rack && <TileRow tiles={spread.rack} />}
          {spread.aims.length > 0 && spread.kind !== 'blind' && (
            <p>
              {WALL.aims}:{' '}
              {spread.aims
                .map(({ family, share }) => `${families[family] ?? family} ${percent(share)}`)
                .join(' · ')}
            </p>
          )}
          <SpreadPicture spread={spread} />
        </article>
      ))}
    </section>
  );
}

function Themes({ deal: { themes } }: { readonly deal: ClassReport }) {
  if (themes.length === 0) return <p>{REPORT.noThemes}</p>;
  return (
    <>
      <h3>{REPORT.themes}</h3>
      <table>
        <thead>
          <tr>
            <th scope="col">{REPORT.theme}</th>
            <th scope="col">{REPORT.choices}</th>
            <th scope="col">{REPORT.ofPupils}</th>
            <th scope="col">{REPORT.total}</th>
          </tr>
        </thead>
        <tbody>
          {themes.map(({ theme, words, choices, pupils, total }) => (
            <tr key={theme}>
              <th scope="row">{words}</th>
              <td>{choices}</td>
              <td>{pupils}</td>
              <td>{figure(total)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function ByName({ pupils }: { readonly pupils: NonNullable<DrillReport['pupils']> }) {
  return (
    <section aria-labelledby="by-name">
      <h2 id="by-name">{REPORT.byName}</h2>
      <p class="aside">{REPORT.byNameAbout}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">{REPORT.ofPupils}</th>
            <th scope="col">{REPORT.journey}</th>
            <th scope="col">{REPORT.total}</th>
          </tr>
        </thead>
        <tbody>
          {pupils.map(({ name, deals }, place) => (
            <tr key={`${place}-${name}`}>
              <th scope="row">{name}</th>
              <td>{deals.map(({ toGoStart, toGoEnd }) => `${toGoStart} → ${toGoEnd}`).join(', ')}</td>
              <td>{figure(deals.reduce((sum, { loss }) => sum + loss, 0))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
