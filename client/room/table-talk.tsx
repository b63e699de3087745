// A word to the others at the table: a few sentences of our own, and a reminder for whom the table waits for.
import { type Said, SEATS, type Seat, type Table } from '../../shared-engine/index.ts';
import type { Room } from './room.ts';
import { nameOf, nameOrYou } from './seat-names.ts';
import { TALK } from './strings.ts';

const TO_ALL = ['ready', 'well-passed', 'one-moment'] as const;

interface TableTalkProps {
  readonly room: Room;
  readonly table: Table;
  /** Seats that the table waits for. */
  readonly waiting: readonly Seat[];
}

/** Nothing where nobody would hear it. */
export function TableTalk({ room, table, waiting }: TableTalkProps) {
  const { you, seats, said = [] } = table;
  const others = SEATS.filter((seat) => seat !== you && seats[seat].kind === 'person');
  if (you === null || table.controls || room.state.value.home !== 'server' || others.length === 0)
    return null;
  return (
    <section class="talk" aria-label={TALK.label}>
      <div class="row">
        {TO_ALL.map((phrase) => (
          <button key={phrase} type="button" onClick={() => room.act({ kind: 'say', phrase, to: null })}>
            {TALK.phrases[phrase]}
          </button>
        ))}
        {others
          .filter((seat) => waiting.includes(seat))
          .map((seat) => (
            <button
              key={seat}
              type="button"
              onClick={() => room.act({ kind: 'say', phrase: 'your-turn', to: seat })}
            >
              {TALK.remind(nameOf(table, seat))}
            </button>
          ))}
      </div>
      {/* The live region reads these out; here they stay for the eye. */}
      <p class="talk-said">
        {said.map((words) => (
          <span key={words.nth}>
            <b>{words.seat === you ? TALK.you : nameOf(table, words.seat)}:</b> {wordsOf(table, words)}{' '}
          </span>
        ))}
      </p>
    </section>
  );
}

/** `Ready?`, or `Tomas, your turn`. */
export function wordsOf(table: Pick<Table, 'seats' | 'you'>, { phrase, to }: Said): string {
  if (to === null) return TALK.phrases[phrase];
  return to === table.you
    ? TALK.phrases[phrase]
    : `${nameOrYou(table, to)}, ${TALK.phrases[phrase].toLowerCase()}`;
}

/** The words that this seat has spoken and that still hold. */
export function wordsAt({ said = [] }: Pick<Table, 'said'>, seat: Seat): Said | undefined {
  return said.find((words) => words.seat === seat);
}

/** What has been said since `before`. */
export function newlySaid(
  before: Pick<Table, 'said'> | null,
  { said = [] }: Pick<Table, 'said'>,
): readonly Said[] {
  const known = Math.max(0, ...(before?.said ?? []).map(({ nth }) => nth));
  return said.filter(({ nth }) => nth > known);
}
