// Puts a table of friends on the page of a club, so that whoever has that page's link can join.
import { useSignal } from '@preact/signals';
import { type Table, tableClubPath } from '../../shared-engine/index.ts';
import { tidyCode } from '../app/routes/route.ts';
import { call } from '../connection/api.ts';
import type { Schema } from '../connection/frame.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { listClubs } from '../storage/clubs.ts';
import { CLUB_LISTING } from './strings.ts';

/** The body of a successful answer is not needed. */
const ignored: Schema<null> = { safeParse: () => ({ success: true, data: null }) };

/** For the host, before the first deal. */
export function ClubListing({ table }: { readonly table: Table }) {
  const known = listClubs(lastingStorage);
  const club = useSignal(known[0]?.code ?? '');
  const mayShow = useSignal(false);
  const shown = useSignal(false);
  const problem = useSignal<string | null>(null);
  const isOwnCard = table.card.id !== 'house';

  async function set(on: boolean) {
    problem.value = isOwnCard && on && !mayShow.value ? CLUB_LISTING.sayMay(table.card.name) : null;
    if (problem.value !== null) return;
    const answer = await call(tableClubPath(table.code), { club: tidyCode(club.value), on }, ignored);
    problem.value = answer.ok ? null : answer.message;
    if (answer.ok) shown.value = on;
  }

  return (
    <details class="club-listing">
      <summary>{CLUB_LISTING.title}</summary>
      <div class="club-listing-form">
        <p>{CLUB_LISTING.about}</p>
        <div class="field">
          <label for="club-code">{CLUB_LISTING.code}</label>
          <input
            id="club-code"
            list="known-clubs"
            autocomplete="off"
            spellcheck={false}
            value={club.value}
            onInput={(event) => {
              club.value = event.currentTarget.value;
            }}
          />
          <datalist id="known-clubs">
            {known.map(({ code, name }) => (
              <option key={code} value={code}>
                {name}
              </option>
            ))}
          </datalist>
        </div>
        {isOwnCard && (
          <>
            <p class="notice">{CLUB_LISTING.mayShow(table.card.name)}</p>
            <label class="choice">
              <input
                type="checkbox"
                checked={mayShow.value}
                onChange={(event) => {
                  mayShow.value = event.currentTarget.checked;
                  problem.value = null;
                }}
              />
              {CLUB_LISTING.may}
            </label>
          </>
        )}
        <p class="notice" role="alert">
          {problem.value}
        </p>
        <div class="row">
          <button type="button" onClick={() => void set(!shown.value)}>
            {shown.value ? CLUB_LISTING.takeOff : CLUB_LISTING.show}
          </button>
        </div>
        <p role="status">{shown.value && CLUB_LISTING.shown}</p>
      </div>
    </details>
  );
}
