// npm run prove -- class-walk: a class in real Chromium, from the preparation at one computer to the report at another.
import path from 'node:path';
import { openChromium } from '../../../client/tools/chromium.ts';
import { type PageServer, startPageServer } from '../../../client/tools/page-server.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import type { Proof, ProofRow } from '../proof.ts';
import { type Form, walkClass } from '../walk/class-evening.ts';

/** Pictures of each screen, to be looked at; not part of the proof. */
const PICTURES = path.resolve(import.meta.dirname, '../../../shots/class-walk');

export const proof: Proof = {
  summary: 'A class prepared, led with a key, shown by code, cut, restarted and reported, in real Chromium.',
  async run({ size, tell }) {
    const full = size === 'full';
    const forms: readonly Form[] = full ? ['alone', 'tables', 'guided'] : ['alone'];
    const { folder, discard } = await temporaryFolder();
    const settings = { DATA_DIR: path.join(folder, 'data') };
    const browser = await openChromium();
    const server = { now: await startPageServer(settings) };
    const rows: ProofRow[] = [];
    try {
      for (const form of forms) {
        const { origin } = server.now;
        const restart = () => startAgain(server, settings);
        const plan = { browser, form, players: full ? 8 : 3, restart, origin, pictures: PICTURES };
        const made = await walkClass(plan);
        await Promise.all(browser.contexts().map((context) => context.close()));
        for (const row of made) tell?.(row);
        rows.push(...made);
      }
      return rows;
    } finally {
      await browser.close();
      await server.now.stop();
      await discard();
    }
  },
};

/** At the same port, so that every page finds it again. */
async function startAgain(
  server: { now: PageServer },
  settings: Readonly<Record<string, string>>,
): Promise<void> {
  const { port } = new URL(server.now.origin);
  await server.now.stop();
  server.now = await startPageServer({ ...settings, PORT: port });
}
