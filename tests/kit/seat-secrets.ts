// Somebody who has copied the secret of a seat, and its owner, who comes back as a browser does.
import { ticketPath } from '../../shared-engine/protocol/paths.ts';
import { httpRejectionSchema, ticketSchema } from '../../shared-engine/protocol/room-http.ts';
import { type Guest, openRoom, post } from './http-client.ts';
import type { TestServer } from './server.ts';
import { Peer } from './sockets.ts';

type Address = Pick<TestServer, 'url'>;

/** A ticket with the secret that follows, or why there is none. */
export async function askForTicket({ url }: Address, code: string, secret: string) {
  const response = await post(`${url}${ticketPath(code)}`, {}, secret);
  const body: unknown = await response.json();
  const cookie = response.headers.get('set-cookie') ?? '';
  if (!response.ok) return { status: response.status, code: httpRejectionSchema.parse(body).code, cookie };
  const { ticket, seat } = ticketSchema.parse(body);
  return { status: 200, ticket, seat, next: /^seat=([^;]+)/.exec(cookie)?.[1] ?? '' };
}

export async function goodTicket(server: Address, code: string, secret: string) {
  const answer = await askForTicket(server, code, secret);
  if (answer.next === undefined || answer.next === '') throw new Error(`no secret came: ${answer.status}`);
  return { ticket: answer.ticket, next: answer.next };
}

/** Comes back as a browser does: with the secret it has, keeping the one that comes. */
export async function comeBack(server: Address, { code }: Guest, secret: string) {
  const { ticket, next } = await goodTicket(server, code, secret);
  return { peer: await Peer.enter(server.url, ticket), next };
}

/** The owner has come back twice since somebody copied the first secret. */
export async function copiedSecret(server: Address) {
  const guest = await openRoom(server);
  const { next } = await comeBack(server, guest, guest.secret);
  const owner = await comeBack(server, guest, next);
  return { guest, copy: guest.secret, owner };
}
