// Holds what a test server answered against the rows that the OpenAPI document is made of.
import { OPERATIONS, rejectionsOf } from '../../server/http/operations.ts';

const rows = new Map(
  OPERATIONS.map((operation) => [
    `${operation.method} ${operation.path}`,
    new Set<string>(rejectionsOf(operation)),
  ]),
);

/** Takes the lines that the server logged, one for each request; files of the page have no row. */
export function expectDocumented(logged: readonly string[]): void {
  const missing = logged.filter((line) => line.includes('"rejection":')).flatMap(missingIn);
  if (missing.length > 0) {
    throw new Error(`operations.ts does not name: ${[...new Set(missing)].join('; ')}`);
  }
}

function missingIn(line: string): string[] {
  const { method, route, rejection } = JSON.parse(line);
  const path = String(route).replaceAll(/:(\w+)/g, '{$1}');
  const row = `${method === 'HEAD' ? 'get' : String(method).toLowerCase()} ${path}`;
  return rows.get(row)?.has(rejection) === false ? [`${row} ${rejection}`] : [];
}
