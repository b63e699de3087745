// The ways into this class from other computers: a teacher's keys, and the code of the big screen.
import { useSignal } from '@preact/signals';
import { classLink, type Dashboard } from '../../../shared-engine/index.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { reachableOrigin } from '../../storage/public-address.ts';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import { fileName, saveFile } from '../../ui/save-file.ts';
import { type Dispatch, makeKey, makeScreenCode } from '../model/requests.ts';
import { KEYS, SCREEN } from './strings.ts';
import { keyFileText, keyLink } from './teacher-key.ts';

interface KeyPanelProps {
  readonly dashboard: Dashboard;
  readonly dispatch: Dispatch;
}

export function KeyPanel({ dashboard, dispatch }: KeyPanelProps) {
  const { code, title, address, keys, ended } = dashboard;
  const origin = reachableOrigin(lastingStorage, { own: window.location.origin, server: address });
  const link = useSignal<string | null>(null);
  const problem = useSignal<string | null>(null);
  async function make() {
    const made = await makeKey(code);
    problem.value = made.ok ? null : made.message;
    if (made.ok) link.value = keyLink(origin ?? window.location.origin, code, made.value.key);
  }
  return (
    <section class="key-panel" aria-labelledby="keys-title">
      <h2 id="keys-title">{KEYS.title}</h2>
      {!ended && <ScreenCode dashboard={dashboard} />}
      <p>{KEYS.about}</p>
      <button type="button" onClick={() => void make()}>
        {KEYS.make}
      </button>
      <p class="notice" role="alert">
        {problem.value}
      </p>
      {link.value !== null && <NewKey title={title} link={link.value} />}
      {keys.map(({ id, at }) => (
        <div class="row" key={id}>
          <ConfirmButton
            name={KEYS.revoke(new Date(at).toLocaleString())}
            yes={KEYS.revokeSure}
            no={KEYS.revokeNot}
            about={KEYS.revokeAbout}
            onYes={() => dispatch({ kind: 'revoke-key', key: id })}
          />
        </div>
      ))}
    </section>
  );
}

export function NewKey({ title, link }: { readonly title: string; readonly link: string }) {
  const copied = useSignal(false);
  async function copy() {
    await navigator.clipboard.writeText(link);
    copied.value = true;
  }
  return (
    <div class="new-key" role="status">
      <p>{KEYS.once}</p>
      <div class="field">
        <label for="key-link">{KEYS.link}</label>
        <input id="key-link" readOnly value={link} onFocus={(event) => event.currentTarget.select()} />
      </div>
      <div class="row">
        <button
          type="button"
          onClick={() =>
            saveFile(`${fileName(title)}-key.json`, 'application/json', keyFileText(title, link))
          }
        >
          {KEYS.save}
        </button>
        {window.isSecureContext && (
          <button type="button" onClick={() => void copy()}>
            {copied.value ? KEYS.copied : KEYS.copy}
          </button>
        )}
      </div>
    </div>
  );
}

function ScreenCode({ dashboard: { code, address, screens } }: Pick<KeyPanelProps, 'dashboard'>) {
  const made = useSignal<string | null>(null);
  const problem = useSignal<string | null>(null);
  async function make() {
    const answer = await makeScreenCode(code);
    problem.value = answer.ok ? null : answer.message;
    if (answer.ok) made.value = answer.value.code;
  }
  return (
    <>
      <h3>{SCREEN.title}</h3>
      <p>{SCREEN.about}</p>
      <p>{`${address ?? window.location.origin}${classLink(code, 'big-screen')}`}</p>
      {made.value !== null && (
        <p class="big-code" data-screen-code={made.value}>
          {[...made.value].join(' ')}
        </p>
      )}
      <div class="row">
        <button type="button" onClick={() => void make()}>
          {screens.hasCode ? SCREEN.again : SCREEN.make}
        </button>
        {screens.hasCode && <p class="aside">{SCREEN.againAbout}</p>}
      </div>
      {screens.open > 0 && <p role="status">{SCREEN.open(screens.open)}</p>}
      <p class="notice" role="alert">
        {problem.value}
      </p>
    </>
  );
}
