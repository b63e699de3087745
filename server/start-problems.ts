// Why a server cannot start, each in one sentence that says what to do.

const OLDEST = [20, 11] as const;

/** Null where this version of Node runs the server. */
export function nodeProblem(version: string): string | null {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const isOld = major < OLDEST[0] || (major === OLDEST[0] && minor < OLDEST[1]);
  return isOld
    ? `Quadrille needs Node ${OLDEST.join('.')} or newer and this is ${version}; install a newer one.`
    : null;
}

/** `prefix` is that of the two settings where address and port come from. */
export function listenProblem(error: unknown, prefix: '' | 'METRICS_', port: number): string {
  const setting = `${prefix}PORT`;
  const code = error instanceof Error && 'code' in error ? error.code : 'unknown';
  switch (code) {
    case 'EADDRINUSE':
      return `Port ${port} is taken by another program; set ${setting} to a free one.`;
    case 'EACCES':
      return `Port ${port} may not be used by this account; set ${setting} to one above 1023.`;
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return `This machine has no such address; set ${prefix}HOST to one of its own, or to 0.0.0.0 for all of them.`;
    default:
      return `The server cannot listen on port ${port} (${String(code)}); set ${setting} to another.`;
  }
}
