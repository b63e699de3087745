// The pages of clubs that somebody has opened on this device, and the way to make one.
import { useSignal } from '@preact/signals';
import { CLUB_LIMITS, isClubName } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { listClubs } from '../../storage/clubs.ts';
import { FullNote } from '../../ui/full-note.tsx';
import { makeClub } from './requests.ts';
import { CLUB_LIST } from './strings.ts';

export function ClubList({ app }: { readonly app: App }) {
  const name = useSignal('');
  const problem = useSignal<string | null>(null);
  const busy = useSignal(false);

  async function make(event: Event) {
    event.preventDefault();
    if (busy.value) return;
    problem.value = isClubName(name.value) ? null : CLUB_LIST.missing;
    if (problem.value !== null) return;
    busy.value = true;
    const answer = await makeClub(name.value);
    busy.value = false;
    if (answer.ok) app.go({ kind: 'club', code: answer.value.code });
    else problem.value = answer.message;
  }

  return (
    <section aria-labelledby="clubs-title">
      <h2 id="clubs-title">{CLUB_LIST.title}</h2>
      <p>{CLUB_LIST.about}</p>
      <ul class="library-list">
        {listClubs(lastingStorage).map(({ code, name: title }) => (
          <li key={code}>
            <PageLink app={app} route={{ kind: 'club', code }}>
              {title}
            </PageLink>
          </li>
        ))}
      </ul>
      <form class="field" onSubmit={(event) => void make(event)} noValidate>
        <label for="new-club">{CLUB_LIST.name}</label>
        <div class="row">
          <input
            id="new-club"
            maxLength={CLUB_LIMITS.letters}
            value={name.value}
            onInput={(event) => {
              name.value = event.currentTarget.value;
            }}
          />
          <button type="submit" aria-disabled={busy.value}>
            {CLUB_LIST.make}
          </button>
        </div>
        <FullNote text={name.value} most={CLUB_LIMITS.letters} />
        <p class="notice" role="alert">
          {problem.value}
        </p>
      </form>
    </section>
  );
}
