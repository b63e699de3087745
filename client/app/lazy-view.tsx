// Shows a part of the page once it is here, and says so in words while it is not.
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Later } from './lazy.ts';
import { PART } from './lazy-strings.ts';

interface FetchedProps<T> {
  readonly later: Later<T>;
  readonly children: (part: T) => ComponentChildren;
}

export function Fetched<T>({ later, children }: FetchedProps<T>) {
  useEffect(() => void later.fetch(), [later]);
  const { value } = later.state;
  switch (value.is) {
    case 'here':
      return <>{children(value.part)}</>;
    case 'coming':
      return (
        <main class="quiet">
          <p role="status">{PART.coming}</p>
        </main>
      );
    case 'missing':
      return (
        <main class="quiet">
          <p role="alert">{PART.missing}</p>
          <button type="button" onClick={() => void later.fetch()}>
            {PART.again}
          </button>
        </main>
      );
  }
}
