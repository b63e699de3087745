// Requests to the server over HTTP; every answer is parsed here, and a failure is a value with a message.
import {
  botInvitedSchema,
  type ClaimSeat,
  classOpenedSchema,
  httpRejectionSchema,
  invitationsPath,
  type OpenRoom,
  type OpenSameDeal,
  type RejectionCode,
  ROOMS_PATH,
  roomOpenedSchema,
  roomPath,
  SAME_DEALS_PATH,
  type Seat,
  seatClaimedSchema,
  seatsPath,
  ticketPath,
  ticketSchema,
} from '../../shared-engine/index.ts';
import type { Schema } from './frame.ts';

/** Where it is enough that there is an answer. */
const anyAnswer: Schema<null> = { safeParse: () => ({ success: true, data: null }) };

export interface Failure {
  readonly ok: false;
  /** A rejection from the server; `unreachable` when no answer came, `outdated` or `unclear` for one that is not understood. */
  readonly code: string;
  readonly message: string;
  /** What is wrong in a file, one sentence each. */
  readonly problems?: readonly string[];
}
export type ApiResult<T> = { readonly ok: true; readonly value: T } | Failure;

/** Whether there is what was asked for; any failure but `missing` leaves that open. */
export function existence(answer: ApiResult<unknown>, missing: RejectionCode): ApiResult<boolean> {
  if (answer.ok) return { ok: true, value: true };
  return answer.code === missing ? { ok: true, value: false } : answer;
}

const UNREACHABLE: Failure = {
  ok: false,
  code: 'unreachable',
  message: 'The server cannot be reached. Check your connection and try again.',
};

/** What the server grants it grants in the form of today; a page that cannot read it is of yesterday. */
const OUTDATED: Failure = {
  ok: false,
  code: 'outdated',
  message: 'This page is older than the server. Reload the page.',
};

const UNCLEAR: Failure = {
  ok: false,
  code: 'unclear',
  message: 'The server’s answer makes no sense to this page. Try again in a moment, or reload the page.',
};

export function openSameDeal(request: OpenSameDeal) {
  return call(SAME_DEALS_PATH, request, classOpenedSchema);
}

export function openRoom(request: OpenRoom) {
  return call(ROOMS_PATH, request, roomOpenedSchema);
}

export function claimSeat(code: string, request: ClaimSeat) {
  return call(seatsPath(code), request, seatClaimedSchema);
}

/** The secret of an invitation for a bot that runs elsewhere; it is told this once. */
export function inviteBot(code: string, seat: Seat) {
  return call(invitationsPath(code), { seat }, botInvitedSchema);
}

/** Whether the server answers, and has a table with this code. */
export async function hasRoom(code: string): Promise<boolean> {
  return (await call(roomPath(code), null, anyAnswer, { method: 'GET' })).ok;
}

/** A one-use ticket for the socket; `seat` is null for a spectator. An aborted request leaves the seat's cookie as it is. */
export function askTicket(code: string, signal: AbortSignal) {
  return call(ticketPath(code), null, ticketSchema, { signal });
}

interface CallOptions {
  readonly method?: 'POST' | 'GET' | 'DELETE';
  readonly signal?: AbortSignal;
}

/** A `null` body sends none. */
export async function call<T>(
  path: string,
  body: object | null,
  schema: Schema<T>,
  options: CallOptions = {},
): Promise<ApiResult<T>> {
  let response: Response;
  let json: unknown;
  try {
    response = await fetch(path, {
      method: 'POST',
      ...options,
      credentials: 'same-origin',
      ...(body && { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
    });
    // Nothing is in the answer to what was deleted.
    json = response.status === 204 ? null : await response.json();
  } catch {
    return UNREACHABLE;
  }
  if (response.ok) {
    const parsed = schema.safeParse(json);
    return parsed.success ? { ok: true, value: parsed.data } : OUTDATED;
  }
  const rejection = httpRejectionSchema.safeParse(json);
  return rejection.success ? { ok: false, ...rejection.data } : UNCLEAR;
}
