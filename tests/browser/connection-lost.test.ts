// The connection is cut: the page says so, stores what the player chose, and sends it once when it is back.
import type { Page, WebSocketRoute } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import {
  dealAlone,
  fillTray,
  nextHeading,
  passButton,
  rack,
  tileLabels,
} from '../../client/tools/page-actions.ts';
import { browserSuite } from '../kit/browser-suite.ts';

const suite = browserSuite();

interface Cable {
  /** Ends the open socket and lets no other through. */
  cut(): Promise<void>;
  heal(): void;
  /** Frames of this kind that the page has sent through. */
  sent(kind: string): number;
}

/** Puts a cable that can be cut between the page and the server. */
async function cableOf(page: Page): Promise<Cable> {
  let whole = true;
  let open: WebSocketRoute | null = null;
  const frames: string[] = [];
  await page.routeWebSocket(/\/api\/socket$/, (socket) => {
    if (!whole) return void socket.close({ code: 1001 });
    open = socket;
    const server = socket.connectToServer();
    socket.onMessage((frame) => {
      frames.push(String(frame));
      server.send(frame);
    });
  });
  return {
    async cut() {
      whole = false;
      await open?.close({ code: 1001 });
    },
    heal() {
      whole = true;
    },
    sent: (kind) => frames.filter((frame) => frame.includes(`"kind":"${kind}"`)).length,
  };
}

describe('a lost connection', () => {
  it('a pass made without a connection is sent exactly once when the connection is back', async () => {
    const page = await suite.newPage();
    const cable = await cableOf(page);
    await dealAlone(page, suite.origin());
    const tiles = await tileLabels(page);
    await cable.cut();
    await page.getByRole('status').getByText('No connection.').waitFor();
    expect(await tileLabels(page)).toEqual(tiles);
    await fillTray(page);
    await passButton(page).click();
    await page.getByRole('status').getByText('We’ll send your pass when you’re back.').waitFor();
    cable.heal();
    expect(await nextHeading(page, 'First right')).toMatch(/^First across/);
    expect(cable.sent('choose')).toBe(1);
    await page.getByText('No connection.').waitFor({ state: 'detached' });
  });

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
