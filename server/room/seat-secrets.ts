// The secrets of one seat: the one in use, those given out to follow it, and those that have been replaced (rule RS4).

export interface SeatSecrets {
  /** Hash of the secret that a connection was last opened with, or of the first one. */
  readonly current: string;
  /** Given out and never used for a connection, oldest first; each may be brought, because `current` still may too. */
  readonly successors: readonly Successor[];
  /** Oldest first. */
  readonly retired: readonly RetiredSecret[];
}

export interface Successor {
  readonly hash: string;
  /** Hash of the secret that was brought when this one was given out. */
  readonly parent: string;
}

export interface RetiredSecret {
  readonly hash: string;
  /** When it was replaced, in milliseconds since 1970. */
  readonly at: number;
  /** Whether somebody has brought it long after that. */
  readonly shown: boolean;
}

/** For this long after it was replaced a secret may be one that a page sent before the answer to another page came. */
export const OVERTAKEN_MS = 30_000;

/** Answers get lost and pages ask at once, so several may be out; beyond that the oldest is dropped. */
const MAX_SUCCESSORS = 6;
const MAX_RETIRED = 12;

export function firstSecret(hash: string): SeatSecrets {
  return { current: hash, successors: [], retired: [] };
}

export function isGood({ current, successors }: SeatSecrets, hash: string): boolean {
  return current === hash || successors.some((one) => one.hash === hash);
}

export function retiredSecret({ retired }: SeatSecrets, hash: string): RetiredSecret | null {
  return retired.find((one) => one.hash === hash) ?? null;
}

/** Another secret is given out to whoever brought `parent`. */
export function withSuccessor(secrets: SeatSecrets, successor: Successor, at: number): SeatSecrets {
  const successors = [...secrets.successors, successor];
  const dropped = successors.splice(0, Math.max(0, successors.length - MAX_SUCCESSORS));
  return { ...secrets, successors, retired: retire(secrets.retired, dropped.map(hashOf), at) };
}

/** A connection was opened with this secret: the one before and what else was given out for it are worth nothing now. */
export function withConfirmed({ current, successors, retired }: SeatSecrets, hash: string, at: number) {
  const others = successors.filter((one) => one.hash !== hash && one.parent !== hash);
  const kept = successors.filter(({ parent }) => parent === hash);
  const replaced = current === hash ? [] : [current];
  return {
    current: hash,
    successors: kept,
    retired: retire(retired, [...replaced, ...others.map(hashOf)], at),
  };
}

/** Somebody has brought a secret that was replaced long ago. */
export function withShown(secrets: SeatSecrets, hash: string): SeatSecrets {
  const retired = secrets.retired.map((one) => (one.hash === hash ? { ...one, shown: true } : one));
  return { ...secrets, retired };
}

function retire(retired: readonly RetiredSecret[], hashes: readonly string[], at: number): RetiredSecret[] {
  const more = hashes.map((hash): RetiredSecret => ({ hash, at, shown: false }));
  return [...retired, ...more].slice(-MAX_RETIRED);
}

function hashOf({ hash }: Successor): string {
  return hash;
}
