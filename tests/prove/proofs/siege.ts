// npm run prove -- siege: every attack that has once succeeded, again, on the built server as a process of its own.
import type { Proof } from '../proof.ts';
import { classReport } from '../siege/class-report.ts';
import { classVandals } from '../siege/class-vandals.ts';
import { copiedCookie } from '../siege/copied-cookie.ts';
import { errorPath } from '../siege/error-path.ts';
import type { Finding } from '../siege/finding.ts';
import { hostileFiles } from '../siege/hostile-files.ts';
import { logGrowth } from '../siege/log-growth.ts';
import { lowList } from '../siege/low-list.ts';
import { oneAddress } from '../siege/one-address.ts';
import { openedDeal } from '../siege/opened-deal.ts';
import { secondServer } from '../siege/second-server.ts';
import { type Attack, besiege } from '../siege/siege.ts';

/** One after the other, but for the one that waits for a time-out. */
const ATTACKS: readonly Attack[] = [
  classReport,
  hostileFiles,
  errorPath,
  oneAddress,
  logGrowth,
  copiedCookie,
  openedDeal,
  classVandals,
  secondServer,
];

export const proof: Proof = {
  summary:
    'Every attack that once got through, again, on the built server as a process: none does (build the page first).',
  async run(input) {
    const findings = await besiege(input, async (siege) => {
      const waiting = lowList(siege);
      waiting.catch(() => {});
      const found: Finding[] = [];
      for (const attack of ATTACKS) found.push(...(await attack(siege)));
      return [...found, ...(await waiting)];
    });
    return findings.map(({ part, what, found, bar, holds }) => ({
      what: `${part}: ${what}`,
      value: found,
      bar,
      ok: holds,
    }));
  },
};
