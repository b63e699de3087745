// A link to another place of the page, followed without loading it anew.
import type { ComponentChildren } from 'preact';
import { goInPage } from '../../ui/in-page-link.ts';
import type { App } from './app.ts';
import { pathOf, type Route } from './route.ts';

interface PageLinkProps {
  readonly app: Pick<App, 'go'>;
  readonly route: Route;
  readonly button?: true;
  /** Called before the page goes there. */
  readonly before?: (() => void) | undefined;
  readonly children: ComponentChildren;
}

export function PageLink({ app, route, button, before, children }: PageLinkProps) {
  return (
    <a
      href={pathOf(route)}
      {...(button && { class: 'button' })}
      onClick={(event) =>
        goInPage(event, () => {
          before?.();
          app.go(route);
        })
      }
    >
      {children}
    </a>
  );
}
