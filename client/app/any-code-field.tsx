// The field for a code of anything: a table, a class, a published drill or a club’s page.
import { useSignal } from '@preact/signals';
import { CodeField } from '../room/code-field.tsx';
import { openCode } from './open-code.ts';
import type { App } from './routes/app.ts';

export function AnyCodeField({ app }: { readonly app: App }) {
  const problem = useSignal<string | null>(null);

  async function open(code: string) {
    problem.value = null;
    problem.value = await openCode(app, code);
  }

  return <CodeField onCode={(code) => void open(code)} problem={problem.value} />;
}
