// What somebody lays in from real tiles stays on the device, whole or not at all.
import { describe, expect, it } from 'vitest';
import { drillOfTable } from '../../client/practice/own-tiles/drill-of-table.ts';
import {
  EMPTY_TABLE,
  type OwnTable,
  readOwnTable,
  storeOwnTable,
} from '../../client/practice/own-tiles/own-table.ts';
import { parseDrill } from '../../shared-engine/drill/parse.ts';
import { prepareDeal } from '../../shared-engine/drill/prepare.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

const begun: OwnTable = {
  ...EMPTY_TABLE,
  table: { ...EMPTY_TABLE.table, dealer: 1 },
  tiles: [
    'bam-1',
    'bam-2',
    'bam-3',
    'bam-4',
    'bam-5',
    'bam-6',
    'bam-7',
    'east',
    'east',
    'red',
    'flower',
    'flower',
    'joker',
  ],
  begun: true,
  helped: ['first-right'],
  entries: [
    {
      kind: 'choice',
      choice: { kind: 'pass', step: 'first-right', tiles: ['bam-1', 'east', 'red'], blind: 0 },
    },
    { kind: 'arrival', tiles: ['dot-1', 'dot-2', 'dot-3'], blind: [0, 0, 0, 0] },
  ],
};

describe('the exchange laid in from real tiles', () => {
  it('is there again when the page is opened anew', () => {
    const storage = memoryStorage();
    expect(readOwnTable(storage)).toEqual(EMPTY_TABLE);
    storeOwnTable(storage, begun);
    expect(readOwnTable(storage)).toEqual(begun);
    const half: OwnTable = { ...begun, begun: false, tiles: begun.tiles.slice(4), entries: [] };
    storeOwnTable(storage, half);
    expect(readOwnTable(storage)).toEqual(half);
  });

  it.each([
    ['no JSON', '{'],
    ['another shape', JSON.stringify({ ...begun, entries: 'none' })],
    ['an answer that withdraws', JSON.stringify(begun).replace('"kind":"pass"', '"kind":"withdraw"')],
    ['steps that cannot follow', JSON.stringify(begun).replace('"dot-1"', '"joker"')],
  ])('begins anew where %s is stored', (_, text) => {
    expect(readOwnTable(memoryStorage({ 'own-tiles': text }))).toEqual(EMPTY_TABLE);
  });

  it('becomes a drill that deals the same rack to everybody', () => {
    const parsed = parseDrill(
      JSON.parse(JSON.stringify(drillOfTable(begun, seedNamed('drill')))),
      houseKernel,
    );
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    const prepared = prepareDeal(parsed.drill, parsed.drill.deals[0]!, houseKernel);
    expect(prepared.ok && prepared.deal.dealer).toBe(1);
    expect(prepared.ok && prepared.deal.prepared[0]).toEqual(begun.tiles);
  });
});
