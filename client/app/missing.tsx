// What the page says at an address where nothing of ours is.

import { Bar } from '../ui/bar.tsx';
import { AnyCodeField } from './any-code-field.tsx';
import { MISSING } from './front-strings.ts';
import type { App } from './routes/app.ts';

export function Missing({ app, what }: { readonly app: App; readonly what: 'page' | 'deal' }) {
  return (
    <>
      <Bar app={app} home />
      <main class="quiet">
        <h1>{what === 'deal' ? MISSING.dealTitle : MISSING.title}</h1>
        <p>{what === 'deal' ? MISSING.dealAbout : MISSING.about}</p>
        <AnyCodeField app={app} />
      </main>
    </>
  );
}
