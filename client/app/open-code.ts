// Where a code leads: one field takes those of tables, of classes and of published drills.
import { classPart } from './lazy.ts';
import type { App } from './routes/app.ts';

/** The server is asked for a class first and then for a drill, and any other code is a table's. */
export async function openCode(app: App, code: string): Promise<void> {
  const classes = await classPart.fetch();
  const known = (await classes?.classExists(code)) ?? false;
  if (known) return app.go({ kind: 'class', code, part: 'main' });
  const isDrill = (await classes?.drillExists(code)) ?? false;
  app.go(isDrill ? { kind: 'drill', code } : { kind: 'room', code });
}
