// The versions of the protocol, its limits, and the codes with which the server closes a socket.

/** The lowest and the highest version that this build speaks. */
export const PROTOCOL_VERSIONS = { lowest: 1, highest: 1 } as const;

/** Largest frame a client may send, in bytes. */
export const MAX_FRAME_BYTES = 4096;

/**
 * The reason of a `restarting` close is a number of milliseconds to wait before connecting again; it is below this one
 * and random for each connection, so that not all return at once.
 */
export const RETRY_SPREAD_MS = 1000;

/** Milliseconds between two heartbeats of the server: so few that a page can tell within ten seconds that they stopped. */
export const HEARTBEAT_MS = 4_000;
/** Milliseconds between two pings; who has not answered one by the next is cut off. */
export const PING_MS = 20_000;

/** Close codes: RFC 6455 §7.4.1 below 4000, our own (private use, §7.4.2) from 4000. */
export const CLOSE = {
  goingAway: 1001,
  tooBig: 1009,
  restarting: 1012,
  helloExpected: 4001,
  ticketRejected: 4002,
  versionUnknown: 4003,
  replaced: 4004,
  tooManyFrames: 4005,
  tooSlow: 4006,
} as const;
