// Where a person sees what is kept of them, here and on the server, takes it along and has it forgotten.
import { useSignal } from '@preact/signals';
import { classMinePath, type KeptEntry, minePath } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import type { Route } from '../app/routes/route.ts';
import { AskedTwice } from '../ui/confirm-button.tsx';
import { saveFile } from '../ui/save-file.ts';
import { forgetKept, readKept } from './requests.ts';
import { entryWords, isLeaders, KEPT } from './strings.ts';

interface KeptPanelProps {
  readonly app: App;
  /** Empties what this browser remembers. */
  readonly onClear: () => void;
}

export function KeptPanel({ app, onClear }: KeptPanelProps) {
  const place = placeOf(app.route.value);
  return (
    <section class="settings kept">
      <h3>{KEPT.title}</h3>
      {place ? <OnServer app={app} {...place} /> : <p>{KEPT.elsewhere}</p>}
      <p>{KEPT.browser}</p>
      <button type="button" onClick={onClear}>
        {KEPT.clear}
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
      return { path: minePath(route.code), about: KEPT.room, code: route.code };
    case 'class':
      return { path: classMinePath(route.code), about: KEPT.class, code: route.code };
    default:
      return null;
  }
}

function OnServer({ app, path, about, code }: Place & { readonly app: App }) {
  const kept = useSignal<readonly KeptEntry[] | null>(null);
  const said = useSignal<string | null>(null);

  async function show() {
    const answer = await readKept(path);
    kept.value = answer.ok ? answer.value.kept : null;
    said.value = answer.ok ? null : answer.sentence;
  }

  async function forget() {
    const answer = await forgetKept(path);
    if (answer.ok) return app.go({ kind: 'front' });
    said.value = answer.sentence;
  }

  return (
    <>
      <p>{about}</p>
      <button type="button" onClick={() => void show()}>
        {KEPT.show}
      </button>
      <p role="status">{said.value}</p>
      {kept.value && (
        <>
          <p>{KEPT.things(kept.value.length)}</p>
          <ol class="kept-list">
            {kept.value.map((entry, place) => (
              <li key={`${place}-${entry.at}`}>{entryWords(entry)}</li>
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
              {KEPT.save}
            </button>
            <Forget leads={isLeaders(kept.value)} onForget={() => void forget()} />
          </div>
        </>
      )}
    </>
  );
}

function Forget({ leads, onForget }: { readonly leads: boolean; readonly onForget: () => void }) {
  const words = leads ? KEPT.forgetClass : KEPT.forget;
  return <AskedTwice {...words} no={KEPT.keep} onYes={onForget} />;
}
