// Shows a part of the page once it is here, and says so in words while it is not.
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { LAZY } from './front-strings.ts';
import type { Lazy } from './lazy.ts';

interface LazyViewProps<T> {
  readonly part: Lazy<T>;
  readonly children: (part: T) => ComponentChildren;
}

export function LazyView<T>({ part, children }: LazyViewProps<T>) {
  useEffect(() => void part.fetch(), [part]);
  const { value } = part.state;
  switch (value.is) {
    case 'loaded':
      return <>{children(value.part)}</>;
    case 'loading':
      return (
        <main class="quiet">
          <p role="status">{LAZY.loading}</p>
        </main>
      );
    case 'failed':
      return (
        <main class="quiet">
          <p role="alert">{LAZY.failed}</p>
          <button type="button" onClick={() => void part.fetch()}>
            {LAZY.again}
          </button>
        </main>
      );
  }
}
