// The bar over every screen: the way home, which table this is, help and settings.
import type { ComponentChildren } from 'preact';
import { goInPage } from './in-page-link.ts';
import { Mark } from './mark.tsx';
import { BAR } from './strings.ts';

/** What the bar does to the page around it. */
export interface BarActions {
  go(route: { readonly kind: 'front' }): void;
  show(sheet: 'help' | 'settings'): void;
}

interface BarProps {
  readonly app: BarActions;
  /** Whether there is a way home; the front page is home. */
  readonly home: boolean;
  readonly children?: ComponentChildren;
}

export function Bar({ app, home, children }: BarProps) {
  return (
    <header class="bar">
      {home && (
        <a
          class="home"
          href="/"
          aria-label={BAR.home}
          onClick={(event) => goInPage(event, () => app.go({ kind: 'front' }))}
        >
          <Mark />
          <span class="home-word" aria-hidden="true">
            Quadrille
          </span>
        </a>
      )}
      {children}
      <nav class="bar-tools" aria-label={BAR.tools}>
        {(['help', 'settings'] as const).map((sheet) => (
          <button key={sheet} type="button" aria-haspopup="dialog" onClick={() => app.show(sheet)}>
            {BAR[sheet]}
          </button>
        ))}
      </nav>
    </header>
  );
}
