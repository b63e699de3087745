// Where a code leads: one field takes those of tables, of classes, of published drills and of clubs’ pages.
import { classPart } from './lazy.ts';
import type { App } from './routes/app.ts';

/** The server is asked for a class first, then for a drill and a club's page, and any other code is a table's. */
export async function openCode(app: App, code: string): Promise<void> {
  const classes = await classPart.fetch();
  const known = (await classes?.classExists(code)) ?? false;
  if (known) return app.go({ kind: 'class', code, part: 'main' });
  const isDrill = (await classes?.drillExists(code)) ?? false;
  if (isDrill) return app.go({ kind: 'drill', code });
  const isClub = (await classes?.clubExists(code)) ?? false;
  app.go(isClub ? { kind: 'club', code } : { kind: 'room', code });
}
