// D4 on the command line: npm run --silent verify-deal -- FILE.
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DealFile } from '../../shared-engine/protocol/deal-file.ts';
import { DEAL_FORMAT } from '../../shared-engine/rules/deal/commitment.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { rootWords } from '../../shared-engine/rules/deal/root-words.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { opened, playOn, seedNamed } from '../kit/rounds.ts';
import { builtCommand } from '../kit/server-process.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'deal-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What the page of seat 1 would save after a round. */
function fileOf(revealRacks: boolean) {
  const { round } = playOn(opened('saved deal', 2, revealRacks), stream('saved deal', 'players'));
  const { record, stage, ownLeaf } = seatView(round, 1);
  if (stage.phase !== 'closed') throw new Error('not closed');
  const { roundId, terms } = round;
  const first = { format: DEAL_FORMAT, dealer: 2, seat: 1, rack: record.start } as const;
  return {
    first,
    committed: { ...first, roundId, terms, commitment: round.commitment! },
    record,
    stage,
    ownLeaf,
  };
}

const closed = fileOf(false);
const open = fileOf(true);
const ownRack = {
  kind: 'own-rack',
  ...closed.committed,
  ownLeaf: closed.ownLeaf!,
} as const satisfies DealFile;
const openRound = {
  kind: 'open-round',
  ...open.committed,
  opened: open.stage.opened!,
  racks: open.stage.racks!,
  moves: open.record.steps.flatMap((step) =>
    step.kind === 'move' ? [{ step: step.step, gave: step.gave, received: step.received }] : [],
  ),
} as const satisfies DealFile;

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function verify(...files: string[]): Promise<Ended> {
  const command = [builtCommand('verify-deal'), ...files];
  return new Promise((resolve) => {
    execFile(process.execPath, command, (error, out, err) => {
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out, err });
    });
  });
}

function saved(name: string, content: unknown): string {
  const file = path.join(folder, name);
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
  return file;
}

describe('D4 a saved deal', () => {
  test('of a table whose racks stay private confirms the own rack, and says that it proves no more', async () => {
    const { code, out } = await verify(saved('own.json', ownRack));
    expect(code).toBe(0);
    expect(out).toMatch(/^The rack holds/);
    expect(out).toContain(rootWords(ownRack.commitment).join(' '));
    expect(out).toMatch(/nothing of the other racks .* not whether the shuffle was fair/);
  });

  test('of a table whose racks are revealed confirms the whole round', async () => {
    const { code, out } = await verify(saved('open.json', openRound));
    expect(code).toBe(0);
    expect(out).toMatch(/^The round holds: all four racks, the wall and every pass/);
    expect(out).toMatch(/does not say that the seed was drawn by chance/);
  });

  test('with another seed, rack, seat, round, East or end does not hold', async () => {
    const [first, ...rest] = ownRack.rack;
    const swapped = [first === 'joker' ? 'white' : 'joker', ...rest];
    const files: [unknown, RegExp][] = [
      [{ ...ownRack, rack: swapped }, /not made for these tiles/],
      [{ ...ownRack, seat: 3 }, /not made for these tiles/],
      [{ ...ownRack, roundId: 'another' }, /not made for these tiles/],
      [{ ...ownRack, dealer: 0 }, /not made for these tiles/],
      [
        { ...openRound, opened: { ...openRound.opened, seed: seedNamed('x') } },
        /not the one that was committed/,
      ],
      [{ ...openRound, rack: swapped }, /other tiles to that seat/],
      [{ ...openRound, moves: [] }, /The pass "first-right" comes out otherwise/],
      [{ ...openRound, racks: openRound.racks.toReversed() }, /other racks than the file says/],
    ];
    const ended = await Promise.all(files.map(([file], n) => verify(saved(`false-${n}.json`, file))));
    for (const [n, { code, out }] of ended.entries()) {
      expect(code).toBe(1);
      expect(out).toMatch(/does not hold\./);
      expect(out).toMatch(files[n]![1]);
    }
  });

  test('that cannot be read is an error that says what to do', async () => {
    const files = [
      path.join(folder, 'nowhere.json'),
      saved('broken.json', '{"format":'),
      saved('other.json', { format: 'something else' }),
      saved('short.json', { ...openRound, opened: { ...openRound.opened, seed: 'abc' } }),
    ];
    const ended = await Promise.all([...files.map((file) => verify(file)), verify(), verify('a', 'b')]);
    for (const { code, out, err } of ended) {
      expect(code).toBe(2);
      expect(out).toBe('');
      expect(err).toMatch(/Save the deal again from the review page|Give one file/);
    }
  });
});

test('D4 a deal that a teacher prepared is said to be one, with nothing to check', async () => {
  const { code, out } = await verify(saved('prepared.json', { kind: 'prepared', ...closed.first }));
  expect(code).toBe(0);
  expect(out).toMatch(/^A teacher prepared this deal: .+ nothing to check\.\n$/);
});
