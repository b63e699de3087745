// What somebody lays in from real tiles stays on the device, whole or not at all.
import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, it } from 'vitest';
import { dropRound, keepRound } from '../../client/practice/history/keep-rounds.ts';
import { drillOfTable } from '../../client/practice/own-tiles/drill-of-table.ts';
import { choicesJudged, laidRound, laidRoundId } from '../../client/practice/own-tiles/laid-round.ts';
import {
  EMPTY_TABLE,
  type OwnTable,
  readOwnTable,
  storeOwnTable,
} from '../../client/practice/own-tiles/own-table.ts';
import { createJudge } from '../../client/practice/question/judged.ts';
import { closeDatabase } from '../../client/storage/history/database.ts';
import { forgottenRounds } from '../../client/storage/history/durability.ts';
import { historyFileParts, readHistoryFile } from '../../client/storage/history/file.ts';
import { listRounds, readRound, wholeHistory } from '../../client/storage/history/rounds.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { HOUSE_CARD, houseCard } from '../../shared-engine/card/house/card.ts';
import { parseDrill } from '../../shared-engine/drill/parse.ts';
import { prepareDeal } from '../../shared-engine/drill/prepare.ts';
import { unpackPlay } from '../../shared-engine/practice/round-play.ts';
import { type LaidExchange, laidRecord, layAll } from '../../shared-engine/rules/laid/laid-exchange.ts';
import { analysisOf } from '../kit/fake-analysis.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';
import { STORED_CARD } from '../kit/stored-rounds.ts';

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

/** The first Charleston, one other seat's vote to stop, and a courtesy of which nothing comes. */
const over: OwnTable = {
  ...begun,
  entries: [
    ...begun.entries,
    {
      kind: 'choice',
      choice: { kind: 'pass', step: 'first-across', tiles: ['dot-1', 'dot-2', 'dot-3'], blind: 0 },
    },
    { kind: 'arrival', tiles: ['crak-1', 'crak-2', 'crak-3'], blind: [0, 0, 0, 0] },
    {
      kind: 'choice',
      choice: { kind: 'pass', step: 'first-left', tiles: ['crak-1', 'crak-2'], blind: 1 },
    },
    { kind: 'arrival', tiles: ['white', 'white'], blind: [1, 0, 2, 0] },
    { kind: 'choice', choice: { kind: 'vote', step: 'vote', go: true } },
    { kind: 'votes', stopped: [3] },
    { kind: 'choice', choice: { kind: 'ask', step: 'courtesy-ask', count: 2 } },
    { kind: 'asks', asked: [2, 1, 0, 3] },
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

  it('R6 becomes a drill that deals the same rack to everybody, and lets the same tiles come', () => {
    const parsed = parseDrill(
      JSON.parse(JSON.stringify(drillOfTable(begun, laid(begun), seedNamed('drill')))),
      houseKernel,
    );
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    const prepared = prepareDeal(parsed.drill, parsed.drill.deals[0]!, houseKernel);
    expect(prepared.ok && prepared.deal.dealer).toBe(1);
    expect(prepared.ok && prepared.deal.prepared[0]).toEqual(begun.tiles);
    expect(parsed.drill.deals[0]!.scripted).toEqual({
      arrivals: { 'first-right': ['dot-1', 'dot-2', 'dot-3'] },
    });
    expect(prepared.ok && prepared.deal.prepared[3]).toEqual(
      expect.arrayContaining(['dot-1', 'dot-2', 'dot-3']),
    );
    const whole = drillOfTable(over, laid(over), seedNamed('whole')).deals[0]!.scripted!;
    expect([Object.keys(whole.arrivals), whole.stopped, whole.asked]).toEqual([
      ['first-right', 'first-across', 'first-left'],
      [3],
      0,
    ]);
  });
});

describe('an exchange laid in to its end', () => {
  beforeEach(async () => {
    await closeDatabase();
    globalThis.indexedDB = new IDBFactory();
  });

  it('is one of the rounds of the past, with its verdicts and what the coach helped with, until its last step is taken back', async () => {
    const notes = memoryStorage();
    const judge = createJudge(houseCard(), ({ choices }, { onChoice }) => {
      queueMicrotask(() => {
        for (const nth of choices) onChoice({ nth, analysis: analysisOf(8).analysis });
      });
      return () => {};
    });
    const exchanges = over.entries.map((_, place) =>
      laid({ ...over, entries: over.entries.slice(0, place) }),
    );
    const exchange = laid(over);
    const kept = (choices = choicesJudged(judge, over, exchanges)) =>
      laidRound({ own: over, exchange, choices, card: HOUSE_CARD, playedAt: 5 });
    // Judged nowhere yet: the review makes all of its choices again.
    expect(kept().summary.choices).toEqual([]);
    over.entries.forEach((entry, place) => {
      if (entry.kind === 'choice') judge.ask(laidRecord(exchanges[place]!), entry.choice);
    });
    await Promise.resolve();
    const round = kept();
    expect(round.summary.choices).toEqual(
      reviewRound(laidRecord(exchange), houseKernel).choices.map(({ kind, step }) =>
        expect.objectContaining({ kind, step, by: 'player', verdict: 'best' }),
      ),
    );
    expect(await keepRound(round, STORED_CARD, notes)).toBeNull();
    expect(await keepRound(kept([]), STORED_CARD, notes)).toBeNull();
    const listed = await listRounds();
    expect(listed).toEqual({ ok: true, value: [round.summary] });
    expect(round.summary).toMatchObject({ place: 'tiles', helped: ['first-right'], open: false });
    const read = await readRound(laidRoundId(exchange));
    expect(read.ok && read.value && unpackPlay(read.value.round.detail.play)?.record).toEqual(
      laidRecord(exchange),
    );
    const file = await wholeHistory();
    const lines = file.ok ? historyFileParts(file.value) : [];
    expect(await readHistoryFile(new Blob(lines), async () => {})).toMatchObject({ ok: true });
    await dropRound(round.summary.id, notes);
    expect(await listRounds()).toEqual({ ok: true, value: [] });
    expect(forgottenRounds(notes, 0)).toBe(0);
  });
});

function laid({ table, tiles, entries }: OwnTable): LaidExchange {
  const result = layAll(table, tiles, entries);
  if (!result.ok) throw new Error(result.message);
  return result.exchange;
}
