// Where a code leads: one field takes those of tables and of classes.
import { classPart } from './lazy.ts';
import type { App } from './routes/app.ts';

/** The server is asked for a class first, and any other code is a table's. */
export async function openCode(app: App, code: string): Promise<void> {
  const classes = await classPart.fetch();
  const known = (await classes?.classExists(code)) ?? false;
  app.go(known ? { kind: 'class', code, part: 'main' } : { kind: 'room', code });
}
