// The AsyncAPI 3 document of the socket, made from the schemas that the server itself parses with.
import { ADVICE, closeCatalogue, rejectionCatalogue } from './advice.ts';
import { exampleMessages } from './example-messages.ts';
import { type JsonObject, jsonSchemasOf, schemaRef } from './json-schema.ts';
import { clientMessageSchema, serverMessageSchema } from './messages.ts';
import { SOCKET_PATH } from './paths.ts';
import { HEARTBEAT_MS, MAX_FRAME_BYTES, PROTOCOL_VERSIONS } from './version.ts';

type MessageSchema =
  | (typeof clientMessageSchema.options)[number]
  | (typeof serverMessageSchema.options)[number];

/** What each message is for; the compiler holds that none is forgotten. */
const SUMMARIES: Readonly<Record<ReturnType<typeof kindOf>, string>> = {
  hello: 'The first frame: redeems a ticket, offers versions and may say which table is known already.',
  choose: 'A choice for the own seat in a round: a pass, its withdrawal, a vote or a courtesy number.',
  action: 'Anything else at the table: readiness, leaving, and what only the host does.',
  'analyzed-by':
    'Who analyzes the choices of the own seat in a round while this connection is open: the page itself, or the server, which is as usual. A program that reads no reviews has no use for it.',
  welcome: 'The answer to `hello`, with the version that is spoken from now on.',
  ack: 'The command with this id is carried out and stored.',
  rejected:
    'The command changed nothing. `id` is null where none could be read, and for a frame above the limit (`too-fast`): that one is answered at once, before the answers to earlier commands, so pause and send again, with the same ids, whatever has no answer.',
  table: 'Everything this audience may know now; replaces what was sent before.',
  delta: 'What has changed since the table with number `after`.',
  storage: 'Whether the server can store anything at the moment; while it cannot, commands are rejected.',
  'old-secret-shown': 'Somebody brought an old secret of this seat and was turned away.',
  heartbeat: 'A sign of life. Silence for longer than two intervals means that the connection is dead.',
  review:
    'The private review of a closed round, for the person on this seat; sent again as it deepens, until `more` is false. Without `more` another may come. It is too long for an example.',
};

const QUERY: JsonObject = {
  type: 'object',
  properties: {
    room: {
      type: 'string',
      description:
        'The code of the room that the ticket is for, so that a proxy can keep its people at one server. May be left out.',
    },
  },
};

function kindOf(schema: MessageSchema): MessageSchema['shape']['kind']['value'] {
  return schema.shape.kind.value;
}

/** `rejected` → `RejectedMessage`. */
function nameOf(kind: string): string {
  const words = kind.split('-').map((word) => word.charAt(0).toUpperCase() + word.slice(1));
  return `${words.join('')}Message`;
}

export function asyncApiDocument(): JsonObject {
  const [fromClient, fromServer] = [clientMessageSchema.options, serverMessageSchema.options];
  const all: readonly MessageSchema[] = [...fromClient, ...fromServer];
  const kinds = all.map(kindOf);
  const named = Object.fromEntries(all.map((schema) => [nameOf(kindOf(schema)), schema]));
  const examples = exampleMessages();
  const { lowest, highest } = PROTOCOL_VERSIONS;
  return {
    asyncapi: '3.0.0',
    info: {
      title: 'Quadrille: the socket of a room',
      version: String(highest),
      description: `Text frames of JSON, one message each. This server speaks the versions ${lowest} to ${highest}. PROTOCOL.md tells the whole conversation; the requests over HTTP are in the OpenAPI document.`,
    },
    defaultContentType: 'application/json',
    channels: {
      socket: {
        address: SOCKET_PATH,
        title: 'The socket',
        description: 'One connection is one seat or one spectator of one room, as its ticket says.',
        messages: Object.fromEntries(kinds.map((kind) => [kind, { $ref: `#/components/messages/${kind}` }])),
        bindings: { ws: { method: 'GET', query: QUERY, bindingVersion: '0.1.0' } },
      },
    },
    operations: {
      receive: operationOf('receive', 'What a client sends.', fromClient),
      send: operationOf('send', 'What the server sends.', fromServer),
    },
    components: {
      messages: Object.fromEntries(kinds.map((kind) => [kind, messageOf(kind, examples[kind] ?? [])])),
      schemas: jsonSchemasOf(named, 'draft-7'),
    },
    'x-limits': { maxFrameBytes: MAX_FRAME_BYTES, heartbeatMs: HEARTBEAT_MS },
    'x-close-codes': closeCatalogue(),
    'x-rejections': rejectionCatalogue(),
    'x-advice': ADVICE,
  };
}

function operationOf(action: 'receive' | 'send', summary: string, schemas: readonly MessageSchema[]) {
  const messages = schemas.map((schema) => ({ $ref: `#/channels/socket/messages/${kindOf(schema)}` }));
  return { action, summary, channel: { $ref: '#/channels/socket' }, messages };
}

function messageOf(kind: keyof typeof SUMMARIES, examples: readonly object[]): JsonObject {
  return {
    name: kind,
    summary: SUMMARIES[kind],
    payload: schemaRef(nameOf(kind)),
    ...(examples.length > 0 && { examples: examples.map((payload) => ({ payload })) }),
  };
}
