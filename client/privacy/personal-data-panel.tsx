// Where people see the data stored about them, here and on the server, save it and delete it.
import { useSignal } from '@preact/signals';
import {
  classPersonalDataPath,
  drillPath,
  type PersonalDataEntry,
  personalDataPath,
} from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import type { Route } from '../app/routes/route.ts';
import { removeClass } from '../storage/history/teaching.ts';
import { ConfirmButton } from '../ui/confirm-button.tsx';
import { saveFile } from '../ui/save-file.ts';
import { deletePersonalData, readPersonalData } from './requests.ts';
import { type Deleted, deletedTogether, entryText, PRIVACY } from './strings.ts';

interface KeptPanelProps {
  readonly app: App;
  /** Deletes what this browser stores. */
  readonly onClear: () => void;
}

export function PersonalDataPanel({ app, onClear }: KeptPanelProps) {
  const place = placeOf(app.route.value);
  return (
    <section class="settings privacy">
      <h3>{PRIVACY.title}</h3>
      {place ? <ServerData app={app} {...place} /> : <p>{PRIVACY.elsewhere}</p>}
      <p>{PRIVACY.browser}</p>
      <button type="button" onClick={onClear}>
        {PRIVACY.clear}
      </button>
    </section>
  );
}

interface Place {
  readonly path: string;
  readonly about: string;
  readonly code: string;
}

function placeOf(route: Route): Place | null {
  switch (route.kind) {
    case 'room':
      return { path: personalDataPath(route.code), about: PRIVACY.room, code: route.code };
    case 'class':
      return { path: classPersonalDataPath(route.code), about: PRIVACY.class, code: route.code };
    case 'drill':
      return { path: drillPath(route.code, 'personal-data'), about: PRIVACY.drill, code: route.code };
    default:
      return null;
  }
}

function ServerData({ app, path, about, code }: Place & { readonly app: App }) {
  const entries = useSignal<readonly PersonalDataEntry[] | null>(null);
  const problem = useSignal<string | null>(null);

  async function show() {
    const answer = await readPersonalData(path);
    entries.value = answer.ok ? answer.value.entries : null;
    problem.value = answer.ok ? null : answer.message;
  }

  async function remove(deleted: Deleted) {
    const answer = await deletePersonalData(`${path}${deleted.only ?? ''}`);
    if (!answer.ok) {
      problem.value = answer.message;
      return;
    }
    // A teacher's device has the report and the drill of the class besides.
    if (deleted.words === PRIVACY.deleteClass) await removeClass(code);
    app.go({ kind: 'front' });
  }

  return (
    <>
      <p>{about}</p>
      <button type="button" onClick={() => void show()}>
        {PRIVACY.show}
      </button>
      <p role="status">{problem.value}</p>
      {entries.value && (
        <>
          <p>{PRIVACY.count(entries.value.length)}</p>
          <ol class="data-entries">
            {entries.value.map((entry, place) => (
              <li key={`${place}-${entry.at}`}>{entryText(entry)}</li>
            ))}
          </ol>
          {entries.value.length > 0 && (
            <div class="row">
              <button
                type="button"
                onClick={() =>
                  saveFile(
                    `quadrille-data-${code}.json`,
                    'application/json',
                    `${JSON.stringify({ code, entries: entries.value }, null, 2)}\n`,
                  )
                }
              >
                {PRIVACY.save}
              </button>
              {deletedTogether(entries.value).map((deleted) => (
                <ConfirmButton
                  key={deleted.words.name}
                  {...deleted.words}
                  no={PRIVACY.keep}
                  onYes={() => remove(deleted)}
                />
              ))}
            </div>
          )}
        </>
      )}
    </>
  );
}
