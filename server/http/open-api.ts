// The OpenAPI 3.1 document of the requests over HTTP, made from the schemas that the server itself parses with.
import {
  ADVICE,
  type JsonObject,
  jsonSchemasOf,
  PROTOCOL_VERSIONS,
  type RejectionCode,
  rejectionCatalogue,
  schemaRef,
} from '../../shared-engine/index.ts';
import { BODIES, type Body, EXAMPLES } from './bodies.ts';
import type { Caller, Operation } from './operation.ts';
import { OPERATIONS, rejectionsOf } from './operations.ts';
import { statusOf } from './rejections.ts';

const MESSAGES = new Map(rejectionCatalogue().map(({ code, message }) => [code, message]));

/** The answer to a body of another type than JSON. */
const OTHER_TYPE: JsonObject = {
  description: 'Rejected: bad-request. The body came without `Content-Type: application/json`.',
  content: rejectionOf('bad-request'),
};

const SCHEMES: Readonly<Record<Exclude<Caller, 'anybody'>, readonly string[]>> = {
  seat: ['seatBearer', 'seatCookie'],
  invitation: ['invitationBearer'],
  player: ['playerCookie'],
  teacher: ['teacherCookie'],
  screen: ['screenCookie'],
};

const bearer = (description: string) => ({ type: 'http', scheme: 'bearer', description });
const cookie = (name: string) => ({ type: 'apiKey', in: 'cookie', name });

export function openApiDocument(): JsonObject {
  return {
    openapi: '3.1.0',
    info: {
      title: 'Quadrille: requests over HTTP',
      version: String(PROTOCOL_VERSIONS.highest),
      description:
        'Opening rooms and classes, taking seats, getting tickets. A request with a body needs `Content-Type: application/json`, and no field that is not in its schema. What is said at a table goes over the socket, which the AsyncAPI document describes; PROTOCOL.md tells the whole conversation.',
    },
    paths: pathsOf(OPERATIONS),
    components: {
      schemas: jsonSchemasOf(BODIES, 'draft-2020-12'),
      securitySchemes: {
        seatBearer: bearer('The secret of a seat, for programs that are no pages.'),
        seatCookie: cookie('seat'),
        invitationBearer: bearer('The secret behind the `#bot=` of an invitation’s link.'),
        playerCookie: cookie('player'),
        teacherCookie: cookie('teacher'),
        screenCookie: cookie('screen'),
      },
    },
    'x-rejections': rejectionCatalogue().map((one) => ({ ...one, status: statusOf(one.code) })),
    'x-advice': ADVICE,
  };
}

function pathsOf(operations: readonly Operation[]): JsonObject {
  const paths: Record<string, JsonObject> = {};
  for (const operation of operations) {
    const { path, method } = operation;
    paths[path] = { ...paths[path], [method]: operationOf(operation) };
  }
  return paths;
}

function operationOf(operation: Operation): JsonObject {
  const { method, path, summary, callers, body, good, waits } = operation;
  const code = { name: 'code', in: 'path', required: true, schema: { type: 'string' } };
  const seen = {
    name: 'seen',
    in: 'query',
    description: 'The `version` of the last answer: waits up to 20 seconds for a newer one.',
    schema: { type: 'string' },
  };
  const parameters = [...(path.includes('{code}') ? [code] : []), ...(waits ? [seen] : [])];
  return {
    summary,
    ...(parameters.length > 0 && { parameters }),
    ...(body && { requestBody: { required: true, content: jsonOf(body) } }),
    responses: {
      ...goodAnswers(good),
      ...rejected(rejectionsOf(operation)),
      ...(method === 'post' && { 415: OTHER_TYPE }),
    },
    security: callers.flatMap((caller) =>
      caller === 'anybody' ? [{}] : SCHEMES[caller].map((scheme) => ({ [scheme]: [] })),
    ),
  };
}

function goodAnswers(good: Operation['good']): JsonObject {
  const answers = Object.entries(good).map(([status, body]) => [
    status,
    body === null ? { description: 'Done.' } : { description: `Good: ${body}.`, content: jsonOf(body) },
  ]);
  return Object.fromEntries(answers);
}

/** One answer for each status, with the codes that come with it; the example is the first, the request's own where it has any. */
function rejected(codes: readonly RejectionCode[]): JsonObject {
  const byStatus = new Map<number, RejectionCode[]>();
  for (const code of new Set(codes)) {
    byStatus.set(statusOf(code), [...(byStatus.get(statusOf(code)) ?? []), code]);
  }
  const answers = [...byStatus].map(([status, some]) => [
    String(status),
    { description: `Rejected: ${some.join(', ')}.`, content: rejectionOf(some[0]!) },
  ]);
  return Object.fromEntries(answers);
}

function rejectionOf(code: RejectionCode): JsonObject {
  const example = { code, message: MESSAGES.get(code), problems: [] };
  return { 'application/json': { schema: schemaRef('Rejection'), example } };
}

function jsonOf(body: Body): JsonObject {
  const example = EXAMPLES[body];
  return { 'application/json': { schema: schemaRef(body), ...(example && { example }) } };
}
