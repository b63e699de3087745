// The classes of one group side by side, the earliest first: what went wrong less, and who came on.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import type { ClassRow } from '../../storage/history/database.ts';
import { listClasses, noteClass } from '../../storage/history/teaching.ts';
import { Bar } from '../../ui/bar.tsx';
import { fetchReport } from '../model/requests.ts';
import { dayText, TEACHING } from '../model/strings.ts';
import { type ClassFigures, figuresOf, type OverWeeks, playersOver, themesOver } from './group-figures.ts';
import { GROUP, LIBRARY } from './strings.ts';

interface GroupScreenProps {
  readonly app: App;
  /** Empty for the classes without a group. */
  readonly name: string;
}

export function GroupScreen({ app, name }: GroupScreenProps) {
  const classes = useGroup(name);
  return (
    <>
      <Bar app={app} home />
      <main class="class-page library">
        <header>
          <h1>{GROUP.title(name || LIBRARY.noGroup)}</h1>
          <p>{GROUP.about}</p>
          <p>
            <PageLink app={app} route={{ kind: 'teaching' }}>
              {TEACHING.title}
            </PageLink>
          </p>
        </header>
        {classes === null ? (
          <p role="status">{GROUP.looking}</p>
        ) : classes.length === 0 ? (
          <p>{GROUP.none}</p>
        ) : (
          <Tables classes={classes} />
        )}
      </main>
    </>
  );
}

/** Those with a report; one that this device has not read yet is asked for. Null while they are on their way. */
function useGroup(name: string): readonly ClassFigures[] | null {
  const figures = useSignal<readonly ClassFigures[] | null>(null);
  useEffect(() => {
    async function load() {
      const listed = await listClasses();
      const rows = (listed.ok ? listed.value : []).filter(({ group }) => group === name).reverse();
      const found: (ClassFigures | null)[] = [];
      for (const row of rows) found.push(figuresOf(await withReport(row)));
      figures.value = found.flatMap((one) => one ?? []);
    }
    void load();
  }, [name, figures]);
  return figures.value;
}

async function withReport(row: ClassRow): Promise<ClassRow> {
  if (row.report !== null) return row;
  const answer = await fetchReport(row.code);
  if (!answer.ok) return row;
  const report = JSON.stringify(answer.value);
  await noteClass(row.code, { report }, row.openedAt);
  return { ...row, report };
}

function Tables({ classes }: { readonly classes: readonly ClassFigures[] }) {
  const costly: OverWeeks = {
    name: GROUP.costly,
    figures: classes.map((one) => (one.choices === 0 ? null : (100 * one.costly) / one.choices)),
  };
  const players: OverWeeks = { name: GROUP.players, figures: classes.map((one) => one.players) };
  const named = playersOver(classes);
  return (
    <>
      <WeeksTable title={GROUP.themes} about={GROUP.themesAbout} classes={classes}>
        {[players, costly, ...themesOver(classes)]}
      </WeeksTable>
      {named.length > 0 && (
        <WeeksTable title={GROUP.byName} about={GROUP.byNameAbout} classes={classes}>
          {named}
        </WeeksTable>
      )}
    </>
  );
}

interface WeeksTableProps {
  readonly title: string;
  readonly about: string;
  readonly classes: readonly ClassFigures[];
  readonly children: readonly OverWeeks[];
}

function WeeksTable({ title, about, classes, children }: WeeksTableProps) {
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <p class="aside">{about}</p>
      <div class="scrolls">
        <table>
          <thead>
            <tr>
              <td />
              {classes.map(({ code, title: name, openedAt }) => (
                <th key={code} scope="col">
                  {dayText(openedAt)} <span class="aside">{name}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {children.map(({ name, figures }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {figures.map((figure, nth) => (
                  <td key={classes[nth]!.code}>{figure === null ? '–' : GROUP.figure(figure)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
