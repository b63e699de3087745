// D4 on the command line: npm run --silent verify-deal -- FILE.
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { DEAL_FILE_FORMAT, type DealFile } from '../../shared-engine/protocol/deal-file.ts';
import { commitmentTo } from '../../shared-engine/rules/deal/commitment.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { seedNamed } from '../kit/rounds.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'deal-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const seed = seedNamed('saved deal');
const honest: DealFile = {
  format: DEAL_FILE_FORMAT,
  commitment: commitmentTo(seed),
  seed,
  dealer: 2,
  seat: 1,
  rack: facesOf(dealTiles({ seed, dealer: 2 }).racks[1]),
};

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

function verify(...files: string[]): Promise<Ended> {
  const command = ['--import', 'tsx', 'server/cli/verify-deal.ts', ...files];
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
  test('that holds is confirmed in words', async () => {
    const { code, out } = await verify(saved('honest.json', honest));
    expect(code).toBe(0);
    expect(out).toMatch(/^The deal holds/);
  });

  test('with another seed, another rack, another seat or another East does not hold', async () => {
    const [first, ...rest] = honest.rack;
    const changes: [Partial<DealFile>, RegExp][] = [
      [{ seed: seedNamed('another') }, /not the one that was promised/],
      [{ rack: [first === 'joker' ? 'white' : 'joker', ...rest] }, /other tiles/],
      [{ seat: 3 }, /other tiles/],
      [{ dealer: 0 }, /other tiles/],
    ];
    const ended = await Promise.all(
      changes.map(([change], n) => verify(saved(`false-${n}.json`, { ...honest, ...change }))),
    );
    for (const [n, { code, out }] of ended.entries()) {
      expect(code).toBe(1);
      expect(out).toMatch(/^The deal does not hold/);
      expect(out).toMatch(changes[n]![1]);
    }
  });

  test('that cannot be read is an error that says what to do', async () => {
    const files = [
      path.join(folder, 'nowhere.json'),
      saved('broken.json', '{"format":'),
      saved('other.json', { format: 'something else' }),
      saved('short.json', { ...honest, seed: 'abc' }),
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
  const { format, dealer, seat, rack } = honest;
  const { code, out } = await verify(saved('prepared.json', { format, prepared: true, dealer, seat, rack }));
  expect(code).toBe(0);
  expect(out).toMatch(/^A teacher prepared this deal: .+ nothing to check\.\n$/);
});
