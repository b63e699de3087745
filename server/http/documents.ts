// The protocol's two documents, for programs that are written against this server.
import type { FastifyInstance, FastifyReply } from 'fastify';
import { asyncApiDocument, type JsonObject } from '../../shared-engine/index.ts';
import { openApiDocument } from './open-api.ts';

export function documentRoutes(app: FastifyInstance): void {
  const documents: Readonly<Record<string, () => JsonObject>> = {
    '/api/openapi.json': openApiDocument,
    '/api/asyncapi.json': asyncApiDocument,
  };
  for (const [path, make] of Object.entries(documents)) {
    // Made when somebody asks for the first time: a start must not wait for what few ever read.
    let text: string | null = null;
    app.get(path, (_, reply: FastifyReply) => {
      text ??= JSON.stringify(make());
      return reply.type('application/json; charset=utf-8').header('cache-control', 'no-cache').send(text);
    });
  }
}
