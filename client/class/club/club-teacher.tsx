// What the teacher of a club's page changes on it: its name, its drill, its tables, its keys.
import { useSignal } from '@preact/signals';
import { type ClubPage, clubLink, teacherLink } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { tidyCode } from '../../app/routes/route.ts';
import { CopyLink } from '../../room/copy-link.tsx';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { forgetClub } from '../../storage/clubs.ts';
import { listPublished } from '../../storage/published.ts';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import { AddressForm, useReachable } from '../keys/address-form.tsx';
import { TeacherKeys } from '../keys/key-panel.tsx';
import { deleteClub, makeClubKey } from './requests.ts';
import { CLUB_TEACHER } from './strings.ts';
import type { ClubModel } from './use-club.ts';

interface ClubTeacherProps {
  readonly app: App;
  readonly page: ClubPage;
  readonly model: ClubModel;
}

export function ClubTeacher({ app, page, model }: ClubTeacherProps) {
  const { code, name, listed, keptOff, address, keys, keptDays } = page;
  const { reachable, own, lookAgain } = useReachable(address);
  const link = `${reachable ?? own}${clubLink(code)}`;
  async function remove() {
    const answer = await deleteClub(code);
    model.rejected.value = answer.ok ? null : answer.message;
    if (!answer.ok) return;
    forgetClub(lastingStorage, code);
    app.go({ kind: 'teaching' });
  }
  return (
    <section class="club-teacher" aria-labelledby="club-teacher">
      <h2 id="club-teacher">{CLUB_TEACHER.title}</h2>
      <p>{CLUB_TEACHER.about}</p>
      <p class="notice" role="alert">
        {model.rejected.value}
      </p>
      <CopyLink link={link} label={CLUB_TEACHER.link} copied={CLUB_TEACHER.linkCopied} />
      {address === null && reachable !== own && <AddressForm address={reachable} onChange={lookAgain} />}
      <DrillForm page={page} model={model} />
      <NameForm key={name} name={name} model={model} />
      {listed.map(({ code: table, standing }) => (
        <div class="row" key={table}>
          <button type="button" onClick={() => model.act({ kind: 'take-off', table })}>
            {CLUB_TEACHER.takeOff(table)}
          </button>
          <span class="aside">{CLUB_TEACHER.standing[standing]}</span>
        </div>
      ))}
      {keptOff.map((table) => (
        <div class="row" key={table}>
          <button type="button" onClick={() => model.act({ kind: 'let-back', table })}>
            {CLUB_TEACHER.letBack(table)}
          </button>
          <span class="aside">{CLUB_TEACHER.keptOff}</span>
        </div>
      ))}
      <h3>{CLUB_TEACHER.keys}</h3>
      <p>{CLUB_TEACHER.keysAbout}</p>
      <TeacherKeys
        title={name}
        keys={keys}
        make={() => makeClubKey(code)}
        linkOf={(key) => teacherLink(link, key)}
        onRevoke={(key) => model.act({ kind: 'revoke-key', key })}
      />
      <div class="row">
        <ConfirmButton
          name={CLUB_TEACHER.remove}
          yes={CLUB_TEACHER.removeYes}
          no={CLUB_TEACHER.removeNot}
          about={CLUB_TEACHER.removeAbout}
          onYes={remove}
        />
      </div>
      <p class="aside">{CLUB_TEACHER.kept(keptDays)}</p>
    </section>
  );
}

/** The drills that were published on this device are chosen by their titles, any other by its code. */
function DrillForm({ page: { drill }, model }: Pick<ClubTeacherProps, 'page' | 'model'>) {
  const own = listPublished(lastingStorage);
  const chosen = drill?.code ?? '';
  const isOther = drill !== null && !own.some(({ code }) => code === chosen);
  const typed = useSignal('');
  const show = (code: string | null) => model.act({ kind: 'show-drill', code });
  return (
    <>
      <div class="field">
        <label for="club-drill-choice">{CLUB_TEACHER.drill}</label>
        <select
          id="club-drill-choice"
          value={chosen}
          onChange={({ currentTarget: { value } }) => show(value === '' ? null : value)}
        >
          <option value="">{CLUB_TEACHER.none}</option>
          {isOther && <option value={chosen}>{drill.title}</option>}
          {own.map(({ code, title }) => (
            <option key={code} value={code}>
              {title}
            </option>
          ))}
        </select>
      </div>
      <form
        class="field"
        onSubmit={(event) => {
          event.preventDefault();
          show(tidyCode(typed.value));
        }}
      >
        <label for="club-drill-code">{CLUB_TEACHER.other}</label>
        <div class="row">
          <input
            id="club-drill-code"
            autocomplete="off"
            spellcheck={false}
            value={typed.value}
            onInput={(event) => {
              typed.value = event.currentTarget.value;
            }}
          />
          <button type="submit">{CLUB_TEACHER.setDrill}</button>
        </div>
      </form>
    </>
  );
}

function NameForm({ name, model }: { readonly name: string; readonly model: ClubModel }) {
  const text = useSignal(name);
  return (
    <form
      class="field"
      onSubmit={(event) => {
        event.preventDefault();
        model.act({ kind: 'rename', name: text.value });
      }}
    >
      <label for="club-name">{CLUB_TEACHER.name}</label>
      <div class="row">
        <input
          id="club-name"
          value={text.value}
          onInput={(event) => {
            text.value = event.currentTarget.value;
          }}
        />
        <button type="submit">{CLUB_TEACHER.setName}</button>
      </div>
    </form>
  );
}
