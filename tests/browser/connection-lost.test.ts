// The connection is cut: the page says so, stores what the player chose, and sends it once when it is back.
import type { Locator, Page, WebSocketRoute } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  answer,
  dealAlone,
  fillTray,
  heading,
  isClosed,
  nextHeading,
  onward,
  openFor,
  passThree,
  rack,
  tileLabels,
  titleOf,
} from '../../client/tools/page-actions.ts';
import { browserSuite, PHONE } from '../kit/browser-suite.ts';
import { isInSight } from '../kit/in-sight.ts';

const suite = browserSuite();

interface Cable {
  /** Ends the open socket; any other waits, so that the page does not come back before it is asked to. */
  cut(): Promise<void>;
  heal(): void;
  /** Frames of this kind that the page has sent through. */
  sent(kind: string): number;
}

/** Puts a cable that can be cut between the page and the server. */
async function cableOf(page: Page): Promise<Cable> {
  let whole = Promise.resolve();
  let heal = () => {};
  let latest: WebSocketRoute | null = null;
  const frames: string[] = [];
  await page.routeWebSocket(/\/api\/socket(\?|$)/, async (socket) => {
    latest = socket;
    await whole;
    // One that the page has given up for another does not come through late.
    if (latest !== socket) return;
    const server = socket.connectToServer();
    socket.onMessage((frame) => {
      frames.push(String(frame));
      server.send(frame);
    });
  });
  return {
    async cut() {
      whole = new Promise((resolve) => {
        heal = resolve;
      });
      await latest?.close({ code: 1001 });
    },
    heal: () => heal(),
    sent: (kind) => frames.filter((frame) => frame.includes(`"kind":"${kind}"`)).length,
  };
}

async function boxOf(place: Locator) {
  await place.waitFor();
  return (await place.boundingBox())!;
}

describe('a lost connection', () => {
  it('from the lobby to the review a choice made without a connection is sent exactly once, and a reload finds the same tiles, order and tray', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    const cable = await cableOf(page);
    const lost = page.getByRole('status').getByText('No connection.');
    const back = async () => {
      // The button goes away with the message, so it is pressed while neither can.
      await page.getByRole('button', { name: 'Try now' }).click();
      cable.heal();
      await lost.waitFor({ state: 'detached' });
    };
    await openFor(page, suite.origin(), 'Ines');
    await cable.cut();
    await lost.waitFor();
    await page.getByRole('button', { name: 'I am ready' }).click();
    await back();
    await rack(page).waitFor();
    await page.getByRole('radio', { name: 'By number' }).check();
    const phases: string[] = [];
    for (let now = await titleOf(page); !isClosed(now); ) {
      if (now.includes(' for ')) await fillTray(page);
      const before = { sent: cable.sent('choose'), tiles: await tileLabels(page) };
      await page.reload();
      await heading(page).filter({ hasText: now }).waitFor();
      expect(await tileLabels(page)).toEqual(before.tiles);
      if (now === 'Courtesy pass') {
        now = await nextHeading(page, now);
        continue;
      }
      phases.push(now.split('.')[0]!);
      await cable.cut();
      await lost.waitFor();
      expect(await tileLabels(page)).toEqual(before.tiles);
      await answer(page, now, { ask: 2, go: false });
      await page.getByText('We’ll send what you chose when you’re back.').waitFor();
      await back();
      now = await nextHeading(page, now);
      expect(cable.sent('choose')).toBe(before.sent + 1);
    }
    expect(phases.length).toBeGreaterThanOrEqual(5);
    const lesson = page.locator('.lesson-text');
    await lesson.waitFor();
    await page.getByText('Was the deal fixed before the first pass?').scrollIntoViewIfNeeded();
    await cable.cut();
    await lost.waitFor();
    expect([await lesson.isVisible(), await isInSight(lost), await isInSight(lesson)]).toEqual([
      true,
      true,
      false,
    ]);
    await back();
    await page.reload();
    await lesson.waitFor();
  }, 120_000);

  it('a lost connection comes back by itself', async () => {
    const page = await suite.newPage();
    const cable = await cableOf(page);
    await dealAlone(page, suite.origin());
    await cable.cut();
    await page.getByText('No connection.').waitFor();
    cable.heal();
    await page.getByText('No connection.').waitFor({ state: 'detached' });
    expect(cable.sent('hello')).toBe(2);
  });

  it('G1 G4 alone with bots a round goes on without the server, over a reload to its review, stands once among the rounds, and the table waits', async () => {
    const page = await suite.newPage({ viewport: PHONE });
    const cable = await cableOf(page);
    await dealAlone(page, suite.origin());
    await passThree(page);
    const asked = await nextHeading(page, 'First right');
    const held = await tileLabels(page);
    // What the page asks of the server to come back, and to see whether it is there.
    const tickets = /\/api\/rooms\/\w+(?:\/ticket)?$/;
    await page.route(tickets, (route) => route.abort());
    const strip = page.getByRole('list', { name: 'Steps of the exchange' });
    const before = await strip.boundingBox();
    await cable.cut();
    cable.heal();
    await page.getByText('No connection.').waitFor();
    // What comes by itself moves nothing.
    expect(await strip.boundingBox()).toEqual(before);
    await passThree(page);
    // Opened anew without the server, the page still has what it was told and what was chosen.
    await page.reload();
    const offer = page.getByRole('button', { name: 'Play on here' });
    // What is said while there is no table covers nothing.
    const [{ y, height }, opening] = [await boxOf(offer), await boxOf(page.getByText('Opening the table…'))];
    expect(opening.y).toBeGreaterThan(y + height);
    await offer.click();
    await nextHeading(page, 'First across');
    await page.getByText('You play on here without the server.').waitFor();
    const here = await tileLabels(page);
    await page.reload();
    await rack(page).waitFor();
    expect(await tileLabels(page)).toEqual(here);
    const finish = async () => {
      let now = await titleOf(page);
      while (!isClosed(now)) now = await onward(page, now, { ask: 0, go: false });
      await page.locator('.lesson-text').waitFor();
    };
    await finish();
    await page.getByText('This round went on without the server').waitFor();
    await page.unroute(tickets);
    await page.evaluate(() => window.dispatchEvent(new Event('online')));
    await page.getByText('The server is back.').waitFor();
    await page.getByRole('button', { name: 'Back to the server’s table' }).click();
    expect(await nextHeading(page, 'What this deal')).toBe(asked);
    expect(await tileLabels(page)).toEqual(held);
    await finish();
    await page.getByText('My rounds has this round once').waitFor();
    await page.getByText('Was the deal fixed before the first pass?').waitFor();
    await page.locator('.bar .home').click();
    await page.getByRole('link', { name: 'My rounds' }).click();
    await page.getByText('Alone, without the server').first().waitFor();
    expect(await page.getByText('Alone at table').count()).toBe(0);
  }, 90_000);

  it('a second page takes the seat over, and the first says so and can take it back', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    const other = await page.context().newPage();
    await other.goto(page.url());
    await rack(other).waitFor();
    await page.getByText('You’re playing in another tab.').waitFor();
    await page.getByRole('button', { name: 'Play here' }).click();
    await other.getByText('You’re playing in another tab.').waitFor();
    expect(await tileLabels(page)).toEqual(await tileLabels(other));
  });
});
