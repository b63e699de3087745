// Every answer that no route gives: unknown addresses, unreadable requests and failures, in the shape of a rejection.
import type { Socket } from 'node:net';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { errorFacts } from '../log.ts';
import { answerMissing } from './pages.ts';
import { rejectAs, rejectionBody, rejectWith } from './rejections.ts';

/**
 * Call it before anything is registered: a route or plugin takes the handlers that are there when it is registered,
 * and with them falls back on the framework's own answers, which quote the cause.
 */
export function answerErrors(app: FastifyInstance, servesPages: boolean): void {
  app.setNotFoundHandler((request, reply) =>
    servesPages ? answerMissing(request, reply) : rejectWith(reply, 'not-found'),
  );
  app.setErrorHandler(answerError);
}

/** For what fails before a route is found, too: give it to Fastify as `frameworkErrors`. */
export function answerError(error: FastifyError | Error, request: FastifyRequest, reply: FastifyReply) {
  const status = statusOf(error);
  if (status === 429) return rejectWith(reply, 'too-fast');
  // The answer never holds the cause; its request id leads to it in the log.
  const facts = errorFacts(error);
  if (status < 500) {
    request.log.info(facts, 'a request could not be read');
    if (status === 413) return rejectWith(reply, 'too-large');
    return rejectAs(reply, status, 'bad-request');
  }
  request.log.error(facts, 'a request failed');
  return rejectWith(reply.header('request-id', request.id), 'try-later');
}

function statusOf(error: Error): number {
  const status = 'statusCode' in error ? error.statusCode : undefined;
  return typeof status === 'number' ? status : 500;
}

/** For what is not even HTTP: give it to Fastify as `clientErrorHandler`. */
export function answerBrokenRequest(_: Error, socket: Socket): void {
  if (!socket.writable) return void socket.destroy();
  const body = JSON.stringify(rejectionBody('bad-request'));
  const head = [
    'HTTP/1.1 400 Bad Request',
    'Content-Type: application/json; charset=utf-8',
    `Content-Length: ${Buffer.byteLength(body)}`,
    'Connection: close',
  ];
  socket.end(`${head.join('\r\n')}\r\n\r\n${body}`);
}
