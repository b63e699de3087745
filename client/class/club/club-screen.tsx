// The page of a club: this month's drill, the tables that somebody can join, and what its teacher changes.
import type { ClubPage } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { WaysFolded } from '../../room/ways-panel.tsx';
import { Bar } from '../../ui/bar.tsx';
import { ClubTeacher } from './club-teacher.tsx';
import { CLUB } from './strings.ts';
import { type ClubModel, useClub } from './use-club.ts';

export function ClubScreen({ app, code }: { readonly app: App; readonly code: string }) {
  const model = useClub(code);
  const page = model.page.value;
  return (
    <>
      <Bar app={app} home />
      {page === null ? (
        <NoClub app={app} model={model} />
      ) : (
        <main class="class-page club">
          <h1>{page.name}</h1>
          <Failed model={model} />
          {!page.teacher && <p role="alert">{model.rejected.value}</p>}
          <Drill app={app} drill={page.drill} />
          <Tables app={app} tables={page.tables} />
          {page.teacher && <ClubTeacher app={app} page={page} model={model} />}
        </main>
      )}
    </>
  );
}

function NoClub({ app, model }: { readonly app: App; readonly model: ClubModel }) {
  const failure = model.failure.value;
  return (
    <main class="quiet">
      {failure === null && <p role="status">{CLUB.opening}</p>}
      {failure?.code === 'no-such-club' && (
        <>
          <h1>{CLUB.gone}</h1>
          <p>{CLUB.goneAbout}</p>
          <p>
            <PageLink app={app} route={{ kind: 'front' }}>
              {CLUB.toFront}
            </PageLink>
          </p>
        </>
      )}
      {failure !== null && failure.code !== 'no-such-club' && <p role="alert">{failure.message}</p>}
    </main>
  );
}

/** What is shown may be old. */
function Failed({ model }: { readonly model: ClubModel }) {
  const failure = model.failure.value;
  if (failure === null) return null;
  return <p role="status">{failure.code === 'unreachable' ? CLUB.toldLast : failure.message}</p>;
}

function Drill({ app, drill }: { readonly app: App } & Pick<ClubPage, 'drill'>) {
  return (
    <section aria-labelledby="club-drill">
      <h2 id="club-drill">{CLUB.drill}</h2>
      {drill === null && <p>{CLUB.noDrill}</p>}
      {drill !== null && drill.state !== 'open' && <p>{CLUB.drillOver(drill.title)}</p>}
      {drill?.state === 'open' && (
        <>
          <p>
            <PageLink app={app} route={{ kind: 'drill', code: drill.code }}>
              {drill.title}
            </PageLink>{' '}
            {CLUB.drillOpen(drill.deals, drill.until)}
          </p>
          <p class="aside">{CLUB.drillAbout}</p>
        </>
      )}
    </section>
  );
}

function Tables({ app, tables }: { readonly app: App } & Pick<ClubPage, 'tables'>) {
  return (
    <section aria-labelledby="club-tables">
      <h2 id="club-tables">{CLUB.tables}</h2>
      {tables.length === 0 && <p>{CLUB.noTables}</p>}
      <ul class="club-tables">
        {tables.map(({ code, free, card, terms }) => (
          <li key={code}>
            <p>
              <b>{CLUB.table(free, card)}</b>{' '}
              <PageLink app={app} route={{ kind: 'room', code }}>
                {CLUB.joinTable(code)}
              </PageLink>
            </p>
            <WaysFolded mode="friends" terms={terms} />
          </li>
        ))}
      </ul>
      <p class="aside">
        {CLUB.open}{' '}
        <PageLink app={app} route={{ kind: 'front' }}>
          {CLUB.toFront}
        </PageLink>
      </p>
    </section>
  );
}
