// Where a person sees what is kept of them, here and on the server, takes it along and has it forgotten.
import { useSignal } from '@preact/signals';
import {
  classPersonalDataPath,
  type PersonalDataEntry,
  personalDataPath,
} from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import type { Route } from '../app/routes/route.ts';
import { ConfirmButton } from '../ui/confirm-button.tsx';
import { saveFile } from '../ui/save-file.ts';
import { deletePersonalData, readPersonalData } from './requests.ts';
import { entryText, isTeachers, PRIVACY } from './strings.ts';

interface KeptPanelProps {
  readonly app: App;
  /** Empties what this browser remembers. */
  readonly onClear: () => void;
}

export function PersonalDataPanel({ app, onClear }: KeptPanelProps) {
  const place = placeOf(app.route.value);
  return (
    <section class="settings kept">
      <h3>{PRIVACY.title}</h3>
      {place ? <OnServer app={app} {...place} /> : <p>{PRIVACY.elsewhere}</p>}
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
    default:
      return null;
  }
}

function OnServer({ app, path, about, code }: Place & { readonly app: App }) {
  const kept = useSignal<readonly PersonalDataEntry[] | null>(null);
  const said = useSignal<string | null>(null);

  async function show() {
    const answer = await readPersonalData(path);
    kept.value = answer.ok ? answer.value.entries : null;
    said.value = answer.ok ? null : answer.message;
  }

  async function forget() {
    const answer = await deletePersonalData(path);
    if (answer.ok) return app.go({ kind: 'front' });
    said.value = answer.message;
  }

  return (
    <>
      <p>{about}</p>
      <button type="button" onClick={() => void show()}>
        {PRIVACY.show}
      </button>
      <p role="status">{said.value}</p>
      {kept.value && (
        <>
          <p>{PRIVACY.things(kept.value.length)}</p>
          <ol class="kept-list">
            {kept.value.map((entry, place) => (
              <li key={`${place}-${entry.at}`}>{entryText(entry)}</li>
            ))}
          </ol>
          <div class="row">
            <button
              type="button"
              onClick={() =>
                saveFile(
                  `quadrille-mine-${code}.json`,
                  'application/json',
                  `${JSON.stringify({ code, kept: kept.value }, null, 2)}\n`,
                )
              }
            >
              {PRIVACY.save}
            </button>
            <Forget leads={isTeachers(kept.value)} onForget={() => void forget()} />
          </div>
        </>
      )}
    </>
  );
}

function Forget({ leads, onForget }: { readonly leads: boolean; readonly onForget: () => void }) {
  const words = leads ? PRIVACY.forgetClass : PRIVACY.forget;
  return <ConfirmButton {...words} no={PRIVACY.keep} onYes={onForget} />;
}
