// The page checks a deal by the commitment that it saw first, also after a reload.
import { describe, expect, it } from 'vitest';
import { type KeptCommitment, keptWith, readKept, writeKept } from '../../client/room/kept-commitment.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { opened, seedNamed } from '../kit/rounds.ts';

function tableOf(round: number, commitment: string | null): Table {
  const empty = { kind: 'empty' } as const;
  return {
    code: 'ABCD2345',
    you: 0,
    seats: [empty, empty, empty, empty],
    mode: 'friends',
    terms: STANDARD_TERMS.friends,
    card: { id: 'house', name: 'House card' },
    round,
    remaining: null,
    view: { ...seatView(opened('kept').round, 0), commitment },
  };
}

describe('the commitment that the page keeps', () => {
  const [first, other] = [seedNamed('first'), seedNamed('other')];

  it('D4 stays the one that was shown first, whatever a later table of the same round says', () => {
    const kept = [tableOf(1, first), tableOf(1, other), tableOf(1, null)].reduce<KeptCommitment | null>(
      keptWith,
      null,
    );
    expect(kept).toEqual({ round: 1, commitment: first });
  });

  it('D4 gives way to that of the next deal, and to none where a teacher prepared it', () => {
    const kept = keptWith(null, tableOf(1, first));
    expect(keptWith(kept, tableOf(2, other))).toEqual({ round: 2, commitment: other });
    expect(keptWith(kept, tableOf(2, null))).toBeNull();
    expect(keptWith(null, { ...tableOf(0, null), view: null })).toBeNull();
  });

  it('D4 is there again after a reload, for its own table alone', () => {
    const tab = memoryStorage();
    writeKept({ round: 7, commitment: first }, 'ABCD2345', tab);
    expect(readKept('ABCD2345', tab)).toEqual({ round: 7, commitment: first });
    expect(readKept('EFGH2345', tab)).toBeNull();
    tab.write('commitment.ABCD2345', '7|nonsense');
    expect(readKept('ABCD2345', tab)).toBeNull();
    writeKept(null, 'ABCD2345', tab);
    expect(tab.read('commitment.ABCD2345')).toBeNull();
  });
});
