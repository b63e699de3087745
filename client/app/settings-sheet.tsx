// The settings: how the page reads, moves and sounds, and how this player's tables are set up.
import { useSignal } from '@preact/signals';
import { PersonalDataPanel } from '../privacy/personal-data-panel.tsx';
import { clearStorage } from '../storage/browser-storage.ts';
import { FIRST_SORTS, TEXT_SIZES } from '../storage/settings.ts';
import type { App } from './routes/app.ts';
import '../ui/sheet.css';
import { Sheet } from '../ui/sheet.tsx';
import { percent, SETTINGS } from './settings-strings.ts';
import { TableTerms } from './table-terms.tsx';

export function SettingsSheet({ app }: { readonly app: App }) {
  const settings = app.settings.value;
  return (
    <Sheet title={SETTINGS.title} onClose={() => app.show(null)}>
      <p class="about">{SETTINGS.about}</p>
      <section class="settings">
        <h3>{SETTINGS.reading}</h3>
        <fieldset>
          <legend>{SETTINGS.textSize}</legend>
          <div class="row">
            {TEXT_SIZES.map((textSize) => (
              <label key={textSize} class="choice pill">
                <input
                  type="radio"
                  name="text-size"
                  checked={settings.textSize === textSize}
                  onChange={() => app.change({ textSize })}
                />
                <span>{percent(textSize)}</span>
              </label>
            ))}
          </div>
        </fieldset>
      </section>
      <section class="settings">
        <h3>{SETTINGS.tiles}</h3>
        <Switch
          on={settings.indexMarks}
          name={SETTINGS.indexMarks}
          about={SETTINGS.indexAbout}
          onChange={(indexMarks) => app.change({ indexMarks })}
        />
        <fieldset>
          <legend>{SETTINGS.sort}</legend>
          <div class="row">
            {FIRST_SORTS.map((sort) => (
              <label key={sort} class="choice pill">
                <input
                  type="radio"
                  name="first-sort"
                  checked={settings.sort === sort}
                  onChange={() => app.change({ sort })}
                />
                <span>{SETTINGS.sorts[sort]}</span>
              </label>
            ))}
          </div>
        </fieldset>
      </section>
      <section class="settings">
        <h3>{SETTINGS.motionAndSound}</h3>
        <Switch
          on={settings.reduceMotion}
          name={SETTINGS.reduceMotion}
          about={SETTINGS.reduceMotionAbout}
          onChange={(reduceMotion) => app.change({ reduceMotion })}
        />
        <Switch
          on={settings.sound}
          name={SETTINGS.sound}
          about={SETTINGS.soundAbout}
          onChange={(sound) => app.change({ sound })}
        />
        {settings.sound && (
          <button type="button" onClick={() => void hear()}>
            {SETTINGS.hear}
          </button>
        )}
        {'Notification' in window && <NoticeSwitch app={app} />}
      </section>
      <section class="settings">
        <h3>{SETTINGS.tables}</h3>
        <TableTerms form="sheet" settings={settings} onChange={app.change} />
      </section>
      <PersonalDataPanel app={app} onClear={() => void clearStorage().then(() => window.location.reload())} />
    </Sheet>
  );
}

/** Switched on only where the browser lets the page do it. */
function NoticeSwitch({ app }: { readonly app: App }) {
  const forbidden = useSignal(false);
  async function change(on: boolean) {
    const answer = on ? await Notification.requestPermission() : 'granted';
    forbidden.value = answer !== 'granted';
    app.change({ notices: on && answer === 'granted' });
  }
  return (
    <>
      <Switch
        on={app.settings.value.notices}
        name={SETTINGS.notices}
        about={SETTINGS.noticesAbout}
        onChange={(on) => void change(on)}
      />
      <p role="status">{forbidden.value && SETTINGS.noticesForbidden}</p>
    </>
  );
}

async function hear() {
  const { playAll } = await import('../table/sound-synth.ts');
  playAll();
}

interface SwitchProps {
  readonly on: boolean;
  readonly name: string;
  readonly about: string;
  readonly onChange: (on: boolean) => void;
}

function Switch({ on, name, about, onChange }: SwitchProps) {
  return (
    <label class="choice">
      <input type="checkbox" checked={on} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>
        <b>{name}</b> {about}
      </span>
    </label>
  );
}
