// A class at a test server: its teacher, and players who join by code and sit down at their tables.
import type { Drill } from '../../shared-engine/drill/format.ts';
import {
  type BigScreen,
  bigScreenSchema,
  type ClassAction,
  type ClassTerms,
  classJoinedSchema,
  classOpenedSchema,
  type Dashboard,
  dashboardSchema,
} from '../../shared-engine/protocol/class.ts';
import { type DrillReport, drillReportSchema } from '../../shared-engine/protocol/class-report.ts';
import { CLASSES_PATH, classPath } from '../../shared-engine/protocol/paths.ts';
import { type Guest, post, sitDown } from './http-client.ts';
import type { TestServer } from './server.ts';
import type { Peer } from './sockets.ts';

type Address = Pick<TestServer, 'url'>;

export const TERMS: ClassTerms = { deadline: null, racks: false, names: false, cardClosed: false };

export interface Teacher {
  readonly code: string;
  readonly secret: string;
}

export interface JoinedPlayer extends Guest {
  readonly name: string;
  /** The secret for the class; `secret` is that of the seat. */
  readonly classSecret: string;
}

export async function openClass(
  server: Address,
  drill: Drill,
  terms: Partial<ClassTerms> = {},
): Promise<Teacher> {
  const response = await post(`${server.url}${CLASSES_PATH}`, {
    drill,
    terms: { ...TERMS, ...terms },
    card: null,
  });
  const { code } = classOpenedSchema.parse(await response.json());
  return { code, secret: cookieIn(response, 'teacher') };
}

export async function joinClass(server: Address, code: string, name: string): Promise<JoinedPlayer> {
  const response = await post(`${server.url}${classPath(code, 'players')}`, { name });
  const { room, seat } = classJoinedSchema.parse(await response.json());
  return {
    name,
    code: room,
    seat,
    secret: cookieIn(response, 'seat'),
    classSecret: cookieIn(response, 'player'),
  };
}

/** Players at their sockets, in the order of the names. */
export async function joinAll(server: Address, code: string, names: readonly string[]) {
  const players: JoinedPlayer[] = [];
  for (const name of names) players.push(await joinClass(server, code, name));
  const peers: Peer[] = [];
  for (const player of players) peers.push(await sitDown(server, player));
  return { players, peers };
}

export function act(server: Address, { code, secret }: Teacher, what: ClassAction): Promise<Response> {
  return post(`${server.url}${classPath(code, 'actions')}`, what, secret);
}

export async function dashboardOf(server: Address, teacher: Teacher): Promise<Dashboard> {
  return dashboardSchema.parse(await (await page(server, teacher, 'dashboard')).json());
}

export async function bigScreenOf(server: Address, teacher: Teacher): Promise<BigScreen> {
  return bigScreenSchema.parse(await (await page(server, teacher, 'big-screen')).json());
}

export async function reportOf(server: Address, teacher: Teacher): Promise<DrillReport> {
  return drillReportSchema.parse(await (await page(server, teacher, 'report')).json());
}

export function page(
  server: Address,
  { code, secret }: Pick<Teacher, 'code'> & { secret?: string },
  part: 'dashboard' | 'big-screen' | 'report',
  query = '',
): Promise<Response> {
  const headers: Record<string, string> = secret ? { authorization: `Bearer ${secret}` } : {};
  return fetch(`${server.url}${classPath(code, part)}${query}`, { headers });
}

export function cookieIn(response: Response, name: string): string {
  for (const cookie of response.headers.getSetCookie()) {
    const secret = new RegExp(`^${name}=([^;]+)`).exec(cookie)?.[1];
    if (secret !== undefined) return secret;
  }
  throw new Error(`no cookie "${name}" came (${response.status})`);
}
