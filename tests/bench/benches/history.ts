// The rounds that a browser stores, in a real Chromium: the list, the habits, and merging the files of two devices.
import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { openChromium } from '../../../client/tools/chromium.ts';
import { startPageServer } from '../../../client/tools/page-server.ts';
import { historyLines } from '../../../shared-engine/practice/history-file.ts';
import type { StoredRound } from '../../../shared-engine/practice/stored-round.ts';
import { type Random, stream } from '../../../shared-engine/rules/deal/random.ts';
import { historyOf, storedChoice, storedRound } from '../../kit/stored-rounds.ts';
import type { Bench } from '../bench.ts';

/** As many as somebody plays in ten years of evenings. */
const ROUNDS = 5_000;
/** Rounds that are really played; the others are the same at other tables. */
const PLAYED = 250;
const TIMES = 5;
const DAY = 86_400_000;

export const bench: Bench = {
  summary: 'List, habits and a merge of two files with 5,000 stored rounds in a real Chromium.',
  async run({ seed }) {
    const folder = mkdtempSync(path.join(tmpdir(), 'quadrille-'));
    const server = await startPageServer();
    const browser = await openChromium();
    try {
      const rounds = storedRounds(seed, 1.5 * ROUNDS);
      // The second device has gone on from half of the first one's rounds.
      const files = [rounds.slice(0, ROUNDS), rounds.slice(ROUNDS / 2)].map((of, nth) => {
        const file = path.join(folder, `${nth}.jsonl`);
        writeFileSync(file, [...historyLines(historyOf(...of))].join(''));
        return file;
      });
      const page = await browser.newPage({ viewport: { width: 1366, height: 850 } });
      page.setDefaultTimeout(120_000);
      await page.goto(`${server.origin}/#my-rounds`);
      await merge(page, files[0]!, ROUNDS);
      const list = await timesOf(page, '#my-rounds', '.round-row');
      const habits = await timesOf(page, '#what-costs-me', '.habit');
      const used = await page.evaluate(async () => (await navigator.storage.estimate()).usage ?? 0);
      await page.goto(`${server.origin}/#my-rounds`);
      const mergeSeconds = await merge(page, files[1]!, ROUNDS / 2);
      return {
        list_ms: Math.round(middle(list)),
        habits_ms: Math.round(middle(habits)),
        merge_s: Math.round(mergeSeconds * 100) / 100,
        kb_per_round: Math.round(statSync(files[0]!).size / ROUNDS / 10.24) / 100,
        stored_kb_per_round: Math.round(used / ROUNDS / 10.24) / 100,
        rounds: ROUNDS,
      };
    } finally {
      await browser.close();
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    }
  },
};

/** Adds a file on the page of rounds; returns the seconds until the page says how many were added. */
async function merge(page: Page, file: string, added: number): Promise<number> {
  await page.getByLabel('Add rounds from a file').waitFor();
  const started = performance.now();
  await page.getByLabel('Add rounds from a file').setInputFiles(file);
  await page.getByText(`${added} rounds added.`).waitFor();
  return (performance.now() - started) / 1000;
}

/** In milliseconds, from the address being followed inside the page until the first row is drawn. */
async function timesOf(page: Page, hash: string, row: string): Promise<number[]> {
  const times: number[] = [];
  for (let time = 0; time <= TIMES; time++) {
    await page.evaluate(goTo, { hash: '', row: '.modes' });
    const ms = await page.evaluate(goTo, { hash, row });
    // The first time also fetches what the page needs.
    if (time > 0) times.push(ms);
  }
  return times;
}

/** In the page: goes to this hash as a link does and resolves when the frame with the row is drawn. */
function goTo({ hash, row }: { readonly hash: string; readonly row: string }): Promise<number> {
  const started = performance.now();
  return new Promise((resolve) => {
    const seen = new MutationObserver(() => {
      if (document.querySelector(row) === null) return;
      seen.disconnect();
      requestAnimationFrame(() => resolve(performance.now() - started));
    });
    seen.observe(document.body, { childList: true, subtree: true });
    window.history.pushState(null, '', `/${hash}`);
    window.dispatchEvent(new PopStateEvent('popstate'));
  });
}

function storedRounds(seed: string, count: number): readonly StoredRound[] {
  const random = stream(seed, 'stored rounds');
  const played = Array.from({ length: PLAYED }, (_, nth) => storedRound(`${seed} ${nth}`, {}, true));
  return Array.from({ length: count }, (_, nth) => {
    const { summary, detail } = played[nth % PLAYED]!;
    const id = nth.toString(16).padStart(32, '0');
    const playedAt = Date.UTC(2026, 0, 1) + (nth / 2) * DAY;
    const choices = summary.choices.flatMap(() => judged(random));
    return {
      summary: { ...summary, id, playedAt, table: `TABLE${nth % 400}`, choices },
      detail: { ...detail, id },
    };
  });
}

const STEPS = [
  'first-right',
  'first-across',
  'first-left',
  'second-left',
  'second-across',
  'second-right',
] as const;

function judged(random: Random) {
  const verdict = () => (random.below(4) === 0 ? 'costly' : 'just-as-good');
  const passes = STEPS.map((step) => storedChoice({ step, ...told(verdict(), random) }));
  return [
    ...passes,
    storedChoice({ step: 'first-left', kind: 'blind', ...told('best', random) }),
    storedChoice({ step: 'second-right', kind: 'blind', ...told('best', random) }),
    storedChoice({ step: 'vote', kind: 'vote', ...told(verdict(), random) }),
    storedChoice({ step: 'courtesy-ask', kind: 'ask', ...told('best', random) }),
    storedChoice({ step: 'courtesy-pass', ...told('best', random) }),
  ];
}

function told(verdict: 'costly' | 'just-as-good' | 'best', random: Random) {
  const loss = (verdict === 'costly' ? 1_500 + random.below(4_000) : random.below(900) - 500) / 1000;
  const mistakes = verdict === 'costly' ? { mistakes: ['broken-multiple'] } : {};
  return { verdict, loss, halfWidth: random.below(600) / 1000, ...mistakes };
}

function middle(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}
