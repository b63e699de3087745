// server/PROTOCOL.md: its tables and its example are what the program says and does; `vitest -u` writes them anew.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { BODY_LIMIT } from '../../server/app.ts';
import { AIMS } from '../../server/class/state.ts';
import { SETTINGS } from '../../server/config.ts';
import { MAX_SPECTATORS } from '../../server/delivery/broadcaster.ts';
import { OPERATIONS } from '../../server/http/operations.ts';
import { statusOf } from '../../server/http/rejections.ts';
import { CHANGES, MAX_UNREADY, MAX_WITHDRAWALS, RETURNS, SITTINGS } from '../../server/room/growth.ts';
import { TICKET_MS } from '../../server/store/tickets.ts';
import { HELLO_MS } from '../../server/ws/session.ts';
import { ADVICE, closeCatalogue, rejectionCatalogue } from '../../shared-engine/protocol/advice.ts';
import { clientMessageSchema, serverMessageSchema } from '../../shared-engine/protocol/messages.ts';
import {
  HEARTBEAT_MS,
  MAX_FRAME_BYTES,
  PING_MS,
  PROTOCOL_VERSIONS,
} from '../../shared-engine/protocol/version.ts';
import { STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { termsSchema } from '../../shared-engine/rules/schemas.ts';
import { exampleConversation } from '../kit/example-conversation.ts';

const FILE = path.resolve(import.meta.dirname, '../../server/PROTOCOL.md');
const text = readFileSync(FILE, 'utf8');

const row = (...cells: readonly (string | number)[]) => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly string[]) =>
  [row(...head), row(...head.map(() => '---')), ...rows].join('\n');

const allowed = ({ atOnce, everyMs }: typeof RETURNS) =>
  `${atOnce} at once, one more every ${everyMs / 1000} seconds`;

const json = (value: unknown) => `\`${JSON.stringify(value)}\``;

/** What a term may be. */
function valuesOf(schema: z.core.$ZodType): string {
  if (schema instanceof z.ZodNullable) return `${valuesOf(schema.unwrap())}, ${json(null)}`;
  if (schema instanceof z.ZodNumber) return `${schema.minValue} to ${schema.maxValue}`;
  const values = schema instanceof z.ZodEnum ? schema.options : [true, false];
  return values.map(json).join(', ');
}
const { friends, alone } = STANDARD_TERMS;
const terms = table(
  ['term', 'may be', 'not named, with friends', 'not named, alone'],
  termsSchema
    .keyof()
    .options.map((name) =>
      row(`\`${name}\``, valuesOf(termsSchema.shape[name]), json(friends[name]), json(alone[name])),
    ),
);
const closes = table(
  ['code', 'means', 'what to do'],
  closeCatalogue().map(({ code, meaning, advice }) => row(code, meaning, advice)),
);
const advice = table(
  ['advice', 'what to do'],
  Object.entries(ADVICE).map(([name, words]) => row(`\`${name}\``, words)),
);
const rejections = table(
  ['code', 'status', 'message', 'advice'],
  rejectionCatalogue().map((one) =>
    row(`\`${one.code}\``, statusOf(one.code), one.message, `\`${one.advice}\``),
  ),
);
const limits = table(
  ['what', 'how much', 'beyond it'],
  [
    row('bytes of a frame', MAX_FRAME_BYTES, 'close code 1009'),
    row(
      'frames of a socket in a second',
      '`MESSAGES_PER_SECOND`, twice as many at once',
      '`too-fast`; after 100 of these 4005',
    ),
    row('seconds until a `hello`', HELLO_MS / 1000, 'close code 4001'),
    row('seconds that a ticket is good', TICKET_MS / 1000, 'close code 4002'),
    row('seconds between two heartbeats', HEARTBEAT_MS / 1000, 'after 9 of silence the connection is dead'),
    row('seconds between two pings', PING_MS / 1000, 'who does not answer is cut off'),
    row(
      'sockets of one address, of all',
      '`SOCKETS_PER_IP`, `MAX_SOCKETS`',
      '`try-later` instead of an upgrade',
    ),
    row('spectators of a room', MAX_SPECTATORS, '`table-full`'),
    row('requests of an address in a minute', '`REQUESTS_PER_MINUTE`', '`too-fast`'),
    row(
      'rooms opened by an address in a minute',
      '`ROOMS_PER_MINUTE`; with a card of one’s own, a class or a club’s page as ten',
      '`too-fast`',
    ),
    row('rooms of an address open with nobody at them', 'twice `ROOMS_PER_MINUTE`', '`too-many-empty-rooms`'),
    row('rooms and classes in memory', '`MAX_ROOMS`', '`too-many-rooms`'),
    row('bytes of a body', BODY_LIMIT, '`too-large`'),
    row('tickets of a seat’s holder', allowed(RETURNS), '`too-often`'),
    row('claims of one seat of a room', allowed(SITTINGS), '`too-often`'),
    row('bots seated, removed or invited by a host', allowed(CHANGES), '`too-often`'),
    row('aims that a player of a class names', allowed(AIMS), '`too-often`'),
    row('withdrawals of a pass in a step', MAX_WITHDRAWALS, '`too-many-withdrawals`'),
    row('readiness taken back before a deal', MAX_UNREADY, '`stays-ready`'),
    row('milliseconds for a choice of a bot of one’s own', '`EXTERNAL_BOT_MS`', 'a stand-in chooses'),
  ],
);

function withSection(document: string, name: string, content: string): string {
  const [begin, end] = [`<!-- ${name} -->\n`, '<!-- end -->'];
  const at = document.indexOf(begin);
  if (at < 0) throw new Error(`PROTOCOL.md has no place for: ${name}`);
  const from = at + begin.length;
  return `${document.slice(0, from)}${content}\n${document.slice(document.indexOf(end, from))}`;
}

test('PROTOCOL.md shows close codes, rejections, limits and a whole conversation as they are', async () => {
  const conversation = (await exampleConversation()).join('\n');
  const sections = {
    terms,
    'close codes': closes,
    advice,
    rejections,
    limits,
    example: `\`\`\`text\n${conversation}\n\`\`\``,
  };
  const now = Object.entries(sections).reduce(
    (sofar, [name, content]) => withSection(sofar, name, content),
    text,
  );
  await expect(now).toMatchFileSnapshot(FILE);
});

test('PROTOCOL.md names every kind of message, step and request of a room, and only settings that there are', () => {
  const kinds = [...clientMessageSchema.options, ...serverMessageSchema.options].map(
    ({ shape }) => shape.kind.value,
  );
  const requests = OPERATIONS.map(({ path: at }) => at.replace('{code}', 'CODE')).filter(
    (at) => at.startsWith('/api/rooms') && !at.endsWith('/personal-data'),
  );
  for (const named of [...kinds, ...STEPS, ...requests]) expect(text).toContain(named);
  const settings = [...text.matchAll(/\b([A-Z]+(?:_[A-Z]+)+)\b/g)].map((match) => match[1]!);
  expect(settings.filter((name) => !SETTINGS.includes(name))).toEqual([]);
  expect(text).toContain(`This is version ${PROTOCOL_VERSIONS.highest} of`);
});
