// The line is cut: the page says so, keeps what the player chose, and sends it once when the line is back.
import type { Page, WebSocketRoute } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { browserSuite } from '../kit/browser-suite.ts';
import { dealAlone, fillTray, nextHeading, passButton, rack, tileLabels } from '../../client/tools/page-actions.ts';

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

describe('a cut line', () => {
  it('keeps a pass made meanwhile and sends it exactly once', async () => {
    const page = await suite.newPage();
    const cable = await cableOf(page);
    await dealAlone(page, suite.origin());
    const tiles = await tileLabels(page);
    await cable.cut();
    await page.getByRole('status').getByText('The line is down').waitFor();
    expect(await tileLabels(page)).toEqual(tiles);
    await fillTray(page);
    await passButton(page).click();
    await page.getByRole('status').getByText('Your choice is kept here and goes out once').waitFor();
    cable.heal();
    expect(await nextHeading(page, 'First right')).toMatch(/^First across/);
    expect(cable.sent('choose')).toBe(1);
    await page.getByText('The line is down').waitFor({ state: 'detached' });
  });

  it('comes back by itself', async () => {
    const page = await suite.newPage();
    const cable = await cableOf(page);
    await dealAlone(page, suite.origin());
    await cable.cut();
    await page.getByText('The line is down').waitFor();
    cable.heal();
    await page.getByText('The line is down').waitFor({ state: 'detached' });
    expect(cable.sent('hello')).toBe(2);
  });

  it('a second page takes the seat over, and the first says so and can take it back', async () => {
    const page = await suite.newPage();
    await dealAlone(page, suite.origin());
    const other = await page.context().newPage();
    await other.goto(page.url());
    await rack(other).waitFor();
    await page.getByText('this one has let go').waitFor();
    await page.getByRole('button', { name: 'Play here' }).click();
    await other.getByText('this one has let go').waitFor();
    expect(await tileLabels(page)).toEqual(await tileLabels(other));
  });
});
