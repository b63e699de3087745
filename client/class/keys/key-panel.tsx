// The ways into this class from other computers: a teacher's keys, and the code of the big screen.
import { useSignal } from '@preact/signals';
import { classLink, type Dashboard } from '../../../shared-engine/index.ts';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import { fileName, saveFile } from '../../ui/save-file.ts';
import { type Dispatch, makeKey, makeScreenCode } from '../model/requests.ts';
import { useReachable } from './address-form.tsx';
import { KEYS, SCREEN } from './strings.ts';
import { keyFileText, keyLink } from './teacher-key.ts';

interface KeyPanelProps {
  readonly dashboard: Dashboard;
  readonly dispatch: Dispatch;
}

export function KeyPanel({ dashboard, dispatch }: KeyPanelProps) {
  const { code, title, address, keys, ended } = dashboard;
  const { reachable, own } = useReachable(address);
  return (
    <section class="key-panel" aria-labelledby="keys-title">
      <h2 id="keys-title">{KEYS.title}</h2>
      {!ended && <ScreenCode dashboard={dashboard} />}
      <p>{KEYS.about}</p>
      <TeacherKeys
        title={title}
        keys={keys}
        make={() => makeKey(code)}
        linkOf={(key) => keyLink(reachable ?? own, code, key)}
        onRevoke={(key) => dispatch({ kind: 'revoke-key', key })}
      />
    </section>
  );
}

interface TeacherKeysProps {
  /** Of the class or drill, for the file. */
  readonly title: string;
  readonly keys: Readonly<Dashboard['keys']>;
  readonly make: () => ReturnType<typeof makeKey>;
  readonly linkOf: (key: string) => string;
  readonly onRevoke: (id: number) => void;
}

/** Makes a key, shows it once, and takes back those that were made. */
export function TeacherKeys({ title, keys, make, linkOf, onRevoke }: TeacherKeysProps) {
  const link = useSignal<string | null>(null);
  const problem = useSignal<string | null>(null);
  async function onMake() {
    const made = await make();
    problem.value = made.ok ? null : made.message;
    if (made.ok) link.value = linkOf(made.value.key);
  }
  return (
    <>
      <div class="row">
        <button type="button" onClick={() => void onMake()}>
          {KEYS.make}
        </button>
      </div>
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
            onYes={() => onRevoke(id)}
          />
        </div>
      ))}
    </>
  );
}

function NewKey({ title, link }: { readonly title: string; readonly link: string }) {
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
