// A real Chromium for the tests: one named by the environment, the system's, or the one a package brings.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import packaged from '@sparticuz/chromium';
import { type Browser, chromium } from 'playwright-core';

const SYSTEM = '/usr/bin/chromium';
const APT = '/usr/bin/apt-get';

// The package's own list of flags switches web security off, and tests of origins would then prove nothing.
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

function launch(executablePath: string): Promise<Browser> {
  return chromium.launch({ executablePath, args: FLAGS, ignoreDefaultArgs: ['--enable-automation'] });
}

/** Starts the browser; the caller closes it. */
export async function openChromium(): Promise<Browser> {
  const named = process.env.QUADRILLE_CHROMIUM;
  if (named) return launch(named);
  if (existsSync(SYSTEM)) return launch(SYSTEM);
  try {
    return await launch(await packaged.executablePath());
  } catch (error) {
    if (!installFromDebian()) throw new Error(advice(error), { cause: error });
    return launch(SYSTEM);
  }
}

/** The packaged build needs libnss3; where that is missing, Debian's own browser brings everything it needs. */
function installFromDebian(): boolean {
  if (process.getuid?.() !== 0 || !existsSync(APT)) return false;
  const quiet = { stdio: 'ignore' as const, env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } };
  try {
    execFileSync(APT, ['update'], quiet);
    execFileSync(APT, ['install', '-y', '--no-install-recommends', 'chromium'], quiet);
  } catch {
    return false;
  }
  return existsSync(SYSTEM);
}

function advice(error: unknown): string {
  const reason = error instanceof Error ? error.message.split('\n')[0] : String(error);
  return `No Chromium could be started (${reason}). Install libnss3 or Debian's package chromium, or name an executable in QUADRILLE_CHROMIUM.`;
}
