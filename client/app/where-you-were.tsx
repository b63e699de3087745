// Ways back from the front page to the tables where this browser sat last.
import { goInPage } from '../ui/in-page-link.ts';
import { WERE } from './front-strings.ts';
import type { App } from './routes/app.ts';
import { pathOf, type Route, routeOf } from './routes/route.ts';

interface WhereYouWereProps {
  readonly app: App;
  /** Above the doors for somebody who has just left a table, so that it is in sight; else below them. */
  readonly at: 'above' | 'below';
}

export function WhereYouWere({ app, at }: WhereYouWereProps) {
  const [latest, ...others] = app
    .recentPlaces()
    .map(placeAt)
    .flatMap((place) => place ?? []);
  if (latest === undefined) return null;
  const hasLeft = app.left.value?.kind === 'room' && pathOf(app.left.value) === pathOf(latest.route);
  if (hasLeft !== (at === 'above')) return null;
  return (
    <nav class="where-you-were" aria-label={WERE.title}>
      {hasLeft && <p role="status">{WERE.left}</p>}
      <PlaceLink app={app} place={latest} words={WERE.back(latest.name)} />
      {others.length > 0 && (
        <>
          <span>{WERE.recent}</span>
          {others.map((place) => (
            <PlaceLink key={place.name} app={app} place={place} words={place.name} />
          ))}
        </>
      )}
    </nav>
  );
}

interface Place {
  readonly route: Route;
  readonly name: string;
}

function PlaceLink({
  app,
  place,
  words,
}: {
  readonly app: App;
  readonly place: Place;
  readonly words: string;
}) {
  return (
    <a href={pathOf(place.route)} onClick={(event) => goInPage(event, () => app.go(place.route))}>
      {words}
    </a>
  );
}

/** Null for a path that leads to no table. */
function placeAt(path: string): Place | null {
  const [name = '', hash = ''] = path.split('#');
  const route = routeOf(name, hash && `#${hash}`);
  if (route.kind === 'room') return { route, name: WERE.table(route.code) };
  if (route.kind === 'day') return { route, name: WERE.day };
  return route.kind === 'deal' ? { route, name: WERE.deal } : null;
}
