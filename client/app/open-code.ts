// Where a code leads: one field takes those of tables, of classes, of published drills and of clubs’ pages.
import type { ApiResult } from '../connection/api.ts';
import { classPart } from './lazy.ts';
import type { App } from './routes/app.ts';
import type { Route } from './routes/route.ts';

/**
 * The server is asked for a class first, then for a drill and a club's page, and any other code is a table's. Says why
 * that could not be found out, in which case nothing is opened; null otherwise.
 */
export async function openCode(app: App, code: string): Promise<string | null> {
  const classes = await classPart.fetch();
  const places: readonly (readonly [Route, ((code: string) => Promise<ApiResult<boolean>>) | undefined])[] = [
    [{ kind: 'class', code, part: 'main' }, classes?.classExists],
    [{ kind: 'drill', code }, classes?.drillExists],
    [{ kind: 'club', code }, classes?.clubExists],
  ];
  for (const [route, exists] of places) {
    const answer = await exists?.(code);
    // Only a server that answers that there is none says so.
    if (answer && !answer.ok) return answer.message;
    if (answer?.value) {
      app.go(route);
      return null;
    }
  }
  app.go({ kind: 'room', code });
  return null;
}
