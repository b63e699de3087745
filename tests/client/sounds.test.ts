// Which sound belongs to what happens at a table; what is heard is the browser's.
import { describe, expect, it } from 'vitest';
import { addToTray, emptyLayout, type RackLayout, withView } from '../../client/room/rack-layout.ts';
import { noticeFor } from '../../client/table/notices.ts';
import { soundFor } from '../../client/table/sounds.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import type { Seat } from '../../shared-engine/rules/deal/seat.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { opened, type Played, playOn } from '../kit/rounds.ts';

function heardAt({ round }: Played, number = 1): { readonly table: Table; readonly layout: RackLayout } {
  const you: Seat = 0;
  const view = seatView(round, you);
  const seat = { kind: 'empty' } as const;
  const table: Table = {
    code: 'ABCD2345',
    you,
    seats: [seat, seat, seat, seat],
    mode: 'friends',
    terms: STANDARD_TERMS.friends,
    card: { id: 'house', name: 'House card' },
    round: number,
    remaining: null,
    view,
  };
  return { table, layout: withView(emptyLayout('suit'), number, view) };
}

const random = stream('sounds', 'choices');

describe('sounds', () => {
  it('a tile that goes into the tray or comes back makes a tap', () => {
    const before = heardAt(opened('sounds'));
    const after = { ...before, layout: addToTray(before.layout, before.layout.tiles[0]!.id, 3) };
    expect([soundFor(before, after), soundFor(after, before), soundFor(before, before)]).toEqual([
      'tap',
      'tap',
      null,
    ]);
  });

  it('tiles that arrive make a clack, and a vote that is over makes a chime', () => {
    const first = opened('sounds');
    const passed = playOn(first, random, ({ resolved }) => resolved.length === 1);
    expect(soundFor(heardAt(first), heardAt(passed))).toBe('clack');
    const voting = playOn(passed, random, ({ phase }) => phase === 'voting');
    const voted = playOn(voting, random, ({ phase }) => phase !== 'voting');
    expect(soundFor(heardAt(voting), heardAt(voted))).toBe('chime');
  });

  it('a reminder makes a chime and a notice, a word to somebody else neither', () => {
    const before = heardAt(opened('sounds'));
    const said = (to: Seat | null) => ({
      ...before,
      table: { ...before.table, said: [{ seat: 1, phrase: 'your-turn', to, nth: 7 } as const] },
    });
    expect([soundFor(before, said(0)), noticeFor(before, said(0))]).toEqual([
      'chime',
      'seat 2 reminds you: it is your choice.',
    ]);
    expect([soundFor(before, said(3)), noticeFor(before, said(3))]).toEqual([null, null]);
    expect(noticeFor(said(0), said(0))).toBeNull();
  });

  it('a notice says that a choice waits, after a deal and after each step, and never a tile', () => {
    const first = opened('sounds');
    const passed = playOn(first, random, ({ resolved }) => resolved.length === 1);
    expect(noticeFor(heardAt(first), heardAt(passed))).toBe('It is your choice.');
    expect(noticeFor(heardAt(passed), heardAt(passed))).toBeNull();
    expect(noticeFor({ table: { ...heardAt(first).table, view: null } }, heardAt(first))).toBe(
      'It is your choice.',
    );
    expect(noticeFor({ table: null }, heardAt(first))).toBeNull();
  });

  it('a new deal and a page that has just opened make no sound', () => {
    const now = heardAt(opened('sounds'), 2);
    expect(soundFor(heardAt(opened('sounds'), 1), now)).toBeNull();
    expect(soundFor({ ...now, table: null }, now)).toBeNull();
  });
});
