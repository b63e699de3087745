// Puts a table of friends on the page of a club, so that whoever has that page's link can join, and takes it off.
import { type Signal, useSignal } from '@preact/signals';
import { type Table, tableClubPath } from '../../shared-engine/index.ts';
import { tidyCode } from '../app/routes/route.ts';
import { call } from '../connection/api.ts';
import type { Schema } from '../connection/frame.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { listClubs } from '../storage/clubs.ts';
import { noteListed, readListed } from '../storage/listed-table.ts';
import { CLUB_LISTING } from './strings.ts';

/** The body of a successful answer is not needed. */
const ignored: Schema<null> = { safeParse: () => ({ success: true, data: null }) };

interface Listing {
  /** Code of the club on whose page this table was put; null for none. */
  readonly club: Signal<string | null>;
  readonly problem: Signal<string | null>;
  show(club: string): Promise<void>;
  takeOff(club: string): Promise<void>;
}

/** Whether whoever looks at the table is the host of one of friends (rule CB2). */
export function mayList({ you, seats, mode }: Table): boolean {
  const own = you === null ? null : seats[you];
  return mode === 'friends' && own?.kind === 'person' && own.host;
}

function useListing({ code }: Table): Listing {
  const club = useSignal(readListed(lastingStorage, code));
  const problem = useSignal<string | null>(null);
  function note(now: string | null) {
    noteListed(lastingStorage, code, now);
    club.value = now;
  }
  async function set(page: string, on: boolean) {
    const answer = await call(tableClubPath(code), { club: page, on }, ignored);
    problem.value = answer.ok ? null : answer.message;
    if (answer.ok) note(on ? page : null);
    // A page that was deleted shows no table.
    else if (!on && answer.code === 'no-such-club') note(null);
  }
  return { club, problem, show: (page) => set(page, true), takeOff: (page) => set(page, false) };
}

/** Before the first deal. */
export function ClubListing({ table }: { readonly table: Table }) {
  const listing = useListing(table);
  const club = listing.club.value;
  return (
    <details class="club-listing">
      <summary>{CLUB_LISTING.title}</summary>
      <div class="club-listing-form">
        {club === null ? (
          <ShowForm table={table} listing={listing} />
        ) : (
          <Listed club={club} listing={listing} />
        )}
      </div>
    </details>
  );
}

/** At a table in play, where a seat that becomes free is offered to whoever reads the page. */
export function ClubListed({ table }: { readonly table: Table }) {
  const listing = useListing(table);
  const club = listing.club.value;
  if (club === null || !mayList(table)) return null;
  return (
    <div class="club-listing-form">
      <Listed club={club} listing={listing} />
    </div>
  );
}

function Listed({ club, listing }: { readonly club: string; readonly listing: Listing }) {
  const name = listClubs(lastingStorage).find(({ code }) => code === club)?.name ?? club;
  return (
    <>
      <p role="status">{CLUB_LISTING.shown(name)}</p>
      <p class="notice" role="alert">
        {listing.problem.value}
      </p>
      <div class="row">
        <button type="button" onClick={() => void listing.takeOff(club)}>
          {CLUB_LISTING.takeOff}
        </button>
      </div>
    </>
  );
}

function ShowForm({ table, listing }: { readonly table: Table; readonly listing: Listing }) {
  const known = listClubs(lastingStorage);
  const typed = useSignal(known[0]?.code ?? '');
  const mayShow = useSignal(false);
  const { problem } = listing;
  const isOwnCard = table.card.id !== 'house';

  function show() {
    problem.value = isOwnCard && !mayShow.value ? CLUB_LISTING.sayMay(table.card.name) : null;
    if (problem.value === null) void listing.show(tidyCode(typed.value));
  }

  return (
    <>
      <p>{CLUB_LISTING.about}</p>
      <div class="field">
        <label for="club-code">{CLUB_LISTING.code}</label>
        <input
          id="club-code"
          list="known-clubs"
          autocomplete="off"
          spellcheck={false}
          value={typed.value}
          onInput={(event) => {
            typed.value = event.currentTarget.value;
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
        <button type="button" onClick={show}>
          {CLUB_LISTING.show}
        </button>
      </div>
    </>
  );
}
