// The version of the protocol and the codes with which the server ends a socket.

/** Versions this build speaks, lowest and highest. */
export const PROTOCOL_VERSIONS = { lowest: 1, highest: 1 } as const;

/** Largest frame a client may send, in bytes. */
export const MAX_FRAME_BYTES = 4096;

/**
 * With `restarting` the reason of the close is a number: milliseconds to wait before coming back, below this one and
 * another for every line, so that not all come at once.
 */
export const RETRY_SPREAD_MS = 1000;

/** Pause between two signs of life from the server, in milliseconds. */
export const HEARTBEAT_MS = 20_000;

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
