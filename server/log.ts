// The structured log, and what it may say of an error.
import { type DestinationStream, type Level, type Logger, pino } from 'pino';

export type Log = Pick<Logger, 'debug' | 'info' | 'warn' | 'error' | 'child'>;

/** JSON lines on standard output, or where `stream` says. */
export function createLog(level: Level | 'silent', stream?: DestinationStream): Logger {
  const options = { level, base: null };
  return stream ? pino(options, stream) : pino(options);
}

/**
 * Kind and place of an error. Its message stays out: it may quote the value that caused it, and that value may
 * be a tile or a secret.
 */
export function errorFacts(error: unknown): Readonly<Record<string, string>> {
  if (!(error instanceof Error)) return { error: typeof error };
  const places = (error.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line));
  const code = 'code' in error && typeof error.code === 'string' ? { code: error.code } : {};
  return {
    error: error.name,
    ...code,
    at: places
      .slice(0, 6)
      .map((line) => line.trim())
      .join(' | '),
  };
}
