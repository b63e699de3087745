// How this table plays, told to everybody who sits or looks in, and changed by its host between deals.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Mode, Table, Terms } from '../../shared-engine/index.ts';
import type { Room } from './room.ts';
import { WAYS } from './strings.ts';
import { waysInWords } from './ways.ts';
import { WaysForm } from './ways-form.tsx';

interface WaysPanelProps {
  readonly room: Room;
  readonly table: Table;
}

/** To be shown between deals. */
export function WaysPanel({ room, table }: WaysPanelProps) {
  const { terms, mode } = table;
  const own = table.you === null ? null : table.seats[table.you];
  const unusual = waysInWords(terms, mode).filter(({ usual }) => !usual);
  return (
    <section class="ways">
      {unusual.length === 0 ? (
        <p>{WAYS.usual(table.card.name)}</p>
      ) : (
        <>
          <p>{WAYS.unusual(table.card.name)}</p>
          <ul class="way-lines">
            {unusual.map(({ says }) => (
              <li key={says}>
                <b>{says}</b>
              </li>
            ))}
          </ul>
        </>
      )}
      <WaysFolded mode={mode} terms={terms} />
      {own?.kind === 'person' && own.host && <HostForm room={room} table={table} />}
    </section>
  );
}

/** Shows at once what the host has chosen, so that a second change does not undo the first on its way. */
function HostForm({ room, table: { terms, mode } }: WaysPanelProps) {
  const wanted = useSignal(terms);
  const { notice, pendingCount } = room.state.value;
  useEffect(() => {
    if (pendingCount === 0) wanted.value = terms;
  }, [terms, notice, pendingCount]);
  return (
    <WaysForm
      mode={mode}
      title={WAYS.change}
      terms={wanted.value}
      onChange={(next) => {
        wanted.value = next;
        room.act({ kind: 'set-terms', terms: next });
      }}
    />
  );
}

interface PlayedTerms {
  readonly mode: Mode;
  readonly terms: Terms;
}

/** For a table in play too: nothing to change. */
export function WaysFolded({ mode, terms }: PlayedTerms) {
  return (
    <details>
      <summary>{WAYS.title}</summary>
      <ul class="way-lines">
        {waysInWords(terms, mode).map(({ says, usual }) => (
          <li key={says}>{usual ? says : <b>{says}</b>}</li>
        ))}
      </ul>
    </details>
  );
}
