// What the page says at an address where nothing of ours is.
import { CodeField } from '../room/code-field.tsx';
import { Bar } from '../ui/bar.tsx';
import { MISSING } from './front-strings.ts';
import { openCode } from './open-code.ts';
import type { App } from './routes/app.ts';

export function Missing({ app }: { readonly app: App }) {
  return (
    <>
      <Bar app={app} home />
      <main class="quiet">
        <h1>{MISSING.title}</h1>
        <p>{MISSING.about}</p>
        <CodeField onCode={(code) => void openCode(app, code)} />
      </main>
    </>
  );
}
