// Quiet ways from the front page to what somebody practices alone, and to the cards on this device.
import { useMemo } from 'preact/hooks';
import { lastingStorage } from '../storage/browser-storage.ts';
import { listOwnCards } from '../storage/own-cards.ts';
import { goInPage } from '../ui/in-page-link.ts';
import { FRONT, PRACTICE_LINKS } from './front-strings.ts';
import type { App } from './routes/app.ts';
import { ownCardOf } from './routes/deal-link.ts';
import { pathOf, type Route } from './routes/route.ts';

interface Way {
  readonly route: Route;
  readonly words: string;
}

const LINKS: readonly Way[] = [
  { route: { kind: 'days' }, words: PRACTICE_LINKS.day },
  { route: { kind: 'racks' }, words: PRACTICE_LINKS.racks },
  { route: { kind: 'exercises' }, words: PRACTICE_LINKS.exercises },
  { route: { kind: 'rounds' }, words: PRACTICE_LINKS.rounds },
  { route: { kind: 'own-tiles' }, words: PRACTICE_LINKS.ownTiles },
  { route: { kind: 'cards', open: null }, words: PRACTICE_LINKS.myCards },
  { route: { kind: 'teaching' }, words: PRACTICE_LINKS.teaching },
];

export function PracticeLinks({ app }: { readonly app: App }) {
  const {
    card,
    ways: { alone },
  } = app.settings.value;
  const chosen = listOwnCards(lastingStorage).find(({ key }) => key === card);
  // One deal as long as the page stands, so that the link is the same for whoever looks where it leads.
  const here = useMemo(
    (): Way => ({
      route: { kind: 'deal', shared: { ...app.freshDeal(), cardOf: ownCardOf(card) } },
      words: FRONT.offline,
    }),
    [card, alone],
  );
  return (
    <nav class="practice-links" aria-label={PRACTICE_LINKS.title}>
      {[...LINKS, here].map(({ route, words }) => (
        <a key={words} href={pathOf(route)} onClick={(event) => goInPage(event, () => app.go(route))}>
          {words}
        </a>
      ))}
      {chosen && <span>{PRACTICE_LINKS.playsWith(chosen.name)}</span>}
    </nav>
  );
}
