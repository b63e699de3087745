// A Python with the `websockets` package for the example bot: the system's, or as root on Debian one that is installed.
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const APT = '/usr/bin/apt-get';
/** Debian's own first: its packages are for no other one. */
const PYTHONS = ['/usr/bin/python3', 'python3'] as const;

/** The program to call, or in words why there is none. */
export function pythonWithWebsockets():
  | { readonly ok: true; readonly python: string }
  | { readonly ok: false; readonly why: string } {
  const python = found() ?? (installFromDebian() ? found() : null);
  if (python !== null) return { ok: true, python };
  return { ok: false, why: 'No Python 3.9 with the package websockets is here; install python3-websockets.' };
}

function found(): string | null {
  return (
    PYTHONS.find((python) =>
      runs(python, ['-c', 'import sys, websockets; assert sys.version_info >= (3, 9)']),
    ) ?? null
  );
}

function installFromDebian(): boolean {
  if (process.getuid?.() !== 0 || !existsSync(APT)) return false;
  const install = ['install', '-y', '--no-install-recommends', 'python3-websockets'];
  return runs(APT, install) || (runs(APT, ['update']) && runs(APT, install));
}

function runs(program: string, args: readonly string[]): boolean {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  try {
    execFileSync(program, args, { stdio: 'ignore', env });
    return true;
  } catch {
    return false;
  }
}
