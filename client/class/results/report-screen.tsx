// The report of a class, to read, print and save: for each deal what was chosen, and the players as the terms allow.
import type { ClassReport, DrillReport } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { TileRow } from '../../tiles/tile-row.tsx';
import { Bar } from '../../ui/bar.tsx';
import { twoPlaces } from '../../ui/numbers.ts';
import { CLASS, choiceTitle, dateAt, dayText, playerCount, TEACHING } from '../model/strings.ts';
import { Aims } from './aims.tsx';
import { ReportTools } from './report-tools.tsx';
import { SpreadPicture } from './spread-picture.tsx';
import { REPORT } from './strings.ts';
import { TeachingPlan } from './teaching-plan.tsx';
import { type KnownReport, useReport } from './use-report.ts';

export function ReportScreen({ app, code }: { readonly app: App; readonly code: string }) {
  const known = useReport(code);
  return (
    <>
      <Bar app={app} home />
      <main class="class-page report">
        {known === null || typeof known === 'string' ? (
          <p role="status">{known ?? REPORT.working}</p>
        ) : (
          <Report app={app} known={known} />
        )}
        <p class="row not-printed">
          <PageLink app={app} route={{ kind: 'class', code, part: 'main' }}>
            {REPORT.back}
          </PageLink>
          <PageLink app={app} route={{ kind: 'teaching' }}>
            {TEACHING.title}
          </PageLink>
        </p>
      </main>
    </>
  );
}

function Report({ app, known }: { readonly app: App; readonly known: KnownReport }) {
  const { report, row } = known;
  const time = row?.openedAt ?? Date.now();
  return (
    <>
      <header>
        <h1>{REPORT.title(report.title)}</h1>
        <p>{[dayText(time), row?.group, report.ended ? CLASS.ended : null].filter(Boolean).join(' · ')}</p>
        <p>{REPORT.private[report.anonymous ? 'anonymous' : 'named']}</p>
      </header>
      <ReportTools report={report} date={dateAt(time)} />
      {report.deals.length === 0 ? <p>{REPORT.nothing}</p> : <TeachingPlan app={app} known={known} />}
      {report.players && <PlayerTable players={report.players} />}
      <section class="legend" aria-labelledby="legend-title">
        <h2 id="legend-title">{REPORT.legend}</h2>
        {REPORT.legendLines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </section>
      {report.deals.map((deal, place) => (
        <DealReport key={deal.deal} deal={deal} number={place + 1} anonymous={report.anonymous} />
      ))}
    </>
  );
}

interface DealReportProps {
  readonly deal: ClassReport;
  readonly number: number;
  readonly anonymous: boolean;
}

export function DealReport({ deal, number, anonymous }: DealReportProps) {
  const { title, players, toGoStart, toGoEnd, steps, sections } = deal;
  // At tables of four a step has a rack, and is told, for each seat.
  const hasSeats = new Set(steps.map(({ seat }) => seat)).size > 1;
  return (
    <section class="deal-report" aria-labelledby={`deal-${number}`}>
      <h2 id={`deal-${number}`}>
        {REPORT.deal} {number}
        {title && `: ${title}`} {players > 0 && <span class="aside">({playerCount(players)})</span>}
      </h2>
      {toGoStart && toGoEnd && (
        <p>
          {REPORT.toGo}: {twoPlaces(toGoStart.mean)} → {twoPlaces(toGoEnd.mean)}
        </p>
      )}
      {steps.length === 0 ? (
        <p>{anonymous ? REPORT.withheld : REPORT.notPlayed}</p>
      ) : (
        <>
          <MistakeTable deal={deal} />
          <h3>{REPORT.steps}</h3>
        </>
      )}
      <div class="deal-steps">
        {steps.filter(wasChosen).map((spread) => (
          <article key={`${spread.seat}${spread.step}${spread.kind}`} class="step-report">
            <h4>
              {hasSeats && CLASS.ofSeat(spread.seat)}
              {choiceTitle(spread)}
            </h4>
            {spread.rack && <TileRow tiles={spread.rack} />}
            {spread.kind !== 'blind' && <Aims aims={spread.aims} names={sections} />}
            <SpreadPicture spread={spread} />
          </article>
        ))}
      </div>
    </section>
  );
}

/** A step at which bots chose for everybody says nothing of the class. */
function wasChosen({ players, withheld }: ClassReport['steps'][number]): boolean {
  return players > 0 || withheld === true;
}

function MistakeTable({ deal: { mistakes, pending } }: { readonly deal: ClassReport }) {
  if (pending > 0) return <p role="status">{REPORT.pending}</p>;
  if (mistakes.length === 0) return <p>{REPORT.noMistakes}</p>;
  return (
    <>
      <h3>{REPORT.mistakes}</h3>
      <table>
        <thead>
          <tr>
            <th scope="col">{REPORT.category}</th>
            <th scope="col">{REPORT.choices}</th>
            <th scope="col">{REPORT.players}</th>
            <th scope="col">{REPORT.total}</th>
          </tr>
        </thead>
        <tbody>
          {mistakes.map(({ category, label, choices, players, totalWinsLost }) => (
            <tr key={category}>
              <th scope="row">{label}</th>
              <td>{choices}</td>
              <td>{players ?? '–'}</td>
              <td>{twoPlaces(totalWinsLost)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

type Deals = NonNullable<DrillReport['players']>[number]['deals'];

function toGoText({ toGoStart, toGoEnd }: Deals[number]): string {
  return toGoStart === null || toGoEnd === null ? REPORT.unfinished : `${toGoStart} → ${toGoEnd}`;
}

/** Only once all of them are known. */
function lostText(deals: Deals): string {
  const lost = deals.flatMap(({ winsLost }) => winsLost ?? []);
  return lost.length < deals.length ? REPORT.notKnown : twoPlaces(lost.reduce((sum, one) => sum + one, 0));
}

function PlayerTable({ players }: { readonly players: NonNullable<DrillReport['players']> }) {
  return (
    <section aria-labelledby="by-name">
      <h2 id="by-name">{REPORT.byName}</h2>
      <p class="aside">{REPORT.byNameAbout}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">{REPORT.player}</th>
            <th scope="col">{REPORT.playerToGo}</th>
            <th scope="col">{REPORT.total}</th>
          </tr>
        </thead>
        <tbody>
          {players.map(({ name, deals }, place) => (
            <tr key={`${place}-${name}`}>
              <th scope="row">{name}</th>
              <td>{deals.map(toGoText).join(', ')}</td>
              <td>{lostText(deals)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
