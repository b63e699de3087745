// The bar over every screen: the way home, which table this is, help and settings.
import type { ComponentChildren } from 'preact';
import { goInPage } from './in-page-link.ts';
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

/** The product's mark: a Q made of a tile and a smaller one on its way out. */
export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 64 64" aria-hidden="true" focusable="false">
      <rect class="mark-tile" x="11" y="6" width="36" height="47" rx="9" />
      <rect class="mark-gap" x="34" y="34" width="24" height="28" rx="6" transform="rotate(-24 46 48)" />
      <rect class="mark-own" x="37" y="37" width="18" height="22" rx="4" transform="rotate(-24 46 48)" />
    </svg>
  );
}
