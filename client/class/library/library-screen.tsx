// My classes and drills: what this device keeps for a teacher, to go on with, to run again, to copy and to save.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { askToPersist } from '../../storage/history/durability.ts';
import { listPublished } from '../../storage/published.ts';
import { Bar } from '../../ui/bar.tsx';
import { FileButton } from '../../ui/file-button.tsx';
import { ProblemList } from '../../ui/problem-list.tsx';
import { ClubList } from '../club/club-list.tsx';
import { KeyFileButton } from '../keys/key-file-button.tsx';
import { TEACHING } from '../model/strings.ts';
import { PUBLISH } from '../published/strings.ts';
import { ClassItem, DrillItem } from './items.tsx';
import { GROUP, LIBRARY } from './strings.ts';
import { type Library, useLibrary } from './use-library.ts';

export function LibraryScreen({ app }: { readonly app: App }) {
  const model = useLibrary(app);
  const { library, problems, undo } = model;
  return (
    <>
      <Bar app={app} home />
      <main class="class-page library">
        <header>
          <h1>{TEACHING.title}</h1>
          <p>{LIBRARY.about}</p>
        </header>
        <div class="row">
          <PageLink app={app} route={{ kind: 'prepare', drill: null }} button>
            {LIBRARY.prepare}
          </PageLink>
          <FileButton words={LIBRARY.addFile} onFile={model.takeFile} />
          <KeyFileButton />
          <PageLink app={app} route={{ kind: 'lesson-link', packed: '' }} button>
            {LIBRARY.openLesson}
          </PageLink>
        </div>
        <ProblemList problems={problems.value} />
        <div role="status">
          {undo.value && (
            <p class="undo">
              {LIBRARY.removed(undo.value.title)}{' '}
              <button type="button" onClick={model.putBack}>
                {LIBRARY.undo}
              </button>
            </p>
          )}
        </div>
        {library.value === null ? (
          <p role="status">{LIBRARY.opening}</p>
        ) : (
          <Lists app={app} model={model} library={library.value} />
        )}
      </main>
    </>
  );
}

interface ListsProps {
  readonly app: App;
  readonly model: ReturnType<typeof useLibrary>;
  readonly library: Library;
}

function Lists({ app, model, library: { drills, classes } }: ListsProps) {
  const groups = [...new Set(classes.map(({ group }) => group))];
  return (
    <>
      <MayVanish some={drills.length > 0} />
      <section aria-labelledby="drills-title">
        <h2 id="drills-title">{LIBRARY.drills}</h2>
        {drills.length === 0 && <p>{LIBRARY.noDrills}</p>}
        <ul class="library-list">
          {drills.map((row) => (
            <DrillItem key={row.id} app={app} model={model} row={row} />
          ))}
        </ul>
      </section>
      <PublishedList app={app} />
      <ClubList app={app} />
      <section aria-labelledby="classes-title">
        <h2 id="classes-title">{LIBRARY.classes}</h2>
        {classes.length === 0 && <p>{LIBRARY.noClasses}</p>}
        {groups.map((group) => {
          const rows = classes.filter((row) => row.group === group);
          return (
            <section key={group} aria-label={group || LIBRARY.noGroup}>
              {groups.length > 1 && <h3>{group || LIBRARY.noGroup}</h3>}
              {rows.length > 1 && (
                <p>
                  <PageLink app={app} route={{ kind: 'group', name: group }} button>
                    {GROUP.open}
                  </PageLink>
                </p>
              )}
              <ul class="library-list">
                {rows.map((row) => (
                  <ClassItem key={row.code} app={app} model={model} row={row} />
                ))}
              </ul>
            </section>
          );
        })}
      </section>
    </>
  );
}

function PublishedList({ app }: { readonly app: App }) {
  const published = listPublished(lastingStorage);
  if (published.length === 0) return null;
  return (
    <section aria-labelledby="published-title">
      <h2 id="published-title">{PUBLISH.mine}</h2>
      <ul class="library-list">
        {published.map(({ code, title }) => (
          <li key={code}>
            <PageLink app={app} route={{ kind: 'drill', code }}>
              {title}
            </PageLink>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Asks the browser to keep what is here, and says so where it does not promise to. */
function MayVanish({ some }: { readonly some: boolean }) {
  const mayVanish = useSignal(false);
  useEffect(() => {
    if (some) {
      void askToPersist().then((sure) => {
        mayVanish.value = !sure;
      });
    }
  }, [some, mayVanish]);
  return some && mayVanish.value ? <p class="aside">{LIBRARY.mayVanish}</p> : null;
}
