// The routes of the page: addresses, codes as people type them, and deals as links.
import { describe, expect, it } from 'vitest';
import { dealHash, readDealHash, type SharedDeal } from '../../client/app/routes/deal-link.ts';
import { pathOf, type Route, routeOf, tidyCode } from '../../client/app/routes/route.ts';
import { notePlace, recentPlaces, rememberPlace } from '../../client/storage/recent-places.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { seedNamed } from '../kit/rounds.ts';

describe('addresses', () => {
  const shared: SharedDeal = {
    deal: { seed: seedNamed('link'), dealer: 3 },
    seat: 1,
    cardOf: 'ABCD2345',
    ways: { secondCharleston: 'none', blindPasses: false, courtesy: 'by-asking' },
  };
  const deal: Route = { kind: 'deal', shared };

  const past: Route = { kind: 'past-round', id: '0123456789abcdef'.repeat(2) };

  const day: Route = { kind: 'day', date: '2028-02-29' };

  it.each<Route>([
    { kind: 'front' },
    { kind: 'room', code: 'ABCD2345' },
    deal,
    { kind: 'rounds' },
    past,
    { kind: 'home-deal', room: 'ABCD2345', round: 12 },
    { kind: 'club', code: 'ABCD2345' },
    { kind: 'days' },
    day,
    { kind: 'racks' },
    { kind: 'exercises' },
    { kind: 'habits' },
    { kind: 'prepare', drill: null },
    { kind: 'prepare', drill: '0123456789abcdef'.repeat(2) },
    { kind: 'teaching' },
    { kind: 'lesson-link', packed: '' },
    { kind: 'lesson-link', packed: '1.H4sIAAAA_-' },
    { kind: 'group', name: '' },
    { kind: 'group', name: 'Tuesday = café/é?' },
  ])('an address leads back to the same route: %o', (route) => {
    const { pathname, hash } = new URL(pathOf(route), 'http://table.test');
    expect(routeOf(pathname, hash)).toEqual(route);
  });

  it('any other address is said to lead nowhere and stays in the address bar', () => {
    expect(routeOf('/index.html')).toEqual({ kind: 'front' });
    for (const path of ['/elsewhere', '/t', '/c/ABCD2345/elsewhere', '/lead/on']) {
      expect(routeOf(path)).toEqual({ kind: 'missing', path, what: 'page' });
      expect(pathOf(routeOf(path))).toBe(path);
    }
    expect(routeOf('/t/%E0%A4%A', '')).toEqual({ kind: 'room', code: 'E0A4A' });
  });

  it('the deal of a day that there is not leads nowhere', () => {
    for (const date of ['2026-02-29', '2026-13-01', '2026-11-31', '26-11-01', '']) {
      expect(routeOf('/', `#deal-of-the-day=${date}`)).toMatchObject({ kind: 'missing', what: 'deal' });
    }
  });

  it('a code may be typed in any case, with blanks, dashes, or as the whole link', () => {
    for (const typed of [
      ' abcd 2345 ',
      'ABCD-2345.',
      'https://table.test/t/ABCD2345?x',
      'https://table.test/T/abcd%202345.',
      'abcd2345',
    ]) {
      expect(tidyCode(typed)).toBe('ABCD2345');
    }
  });

  it('D4 the seed of a shared deal stands after the #, where no server is told of it', () => {
    const { pathname, search } = new URL(pathOf(deal), 'http://table.test');
    expect(pathname + search).toBe('/');
  });

  it('what a message puts behind a link is no part of it', () => {
    for (const behind of ['.', ',', ')', '.”', '%20', '!']) {
      expect(routeOf('/', `${dealHash(shared)}${behind}`)).toEqual({ kind: 'deal', shared });
      expect(routeOf('/', `#deal-of-the-day=2026-11-26${behind}`)).toEqual({
        kind: 'day',
        date: '2026-11-26',
      });
      expect(routeOf('/', `#card=packed_-${behind}`)).toEqual({ kind: 'card-link', packed: 'packed_-' });
    }
    const group = { kind: 'group', name: 'Club (Monday)' } as const;
    expect(routeOf('/', pathOf(group).slice(1))).toEqual(group);
  });

  it('an incomplete deal link is no deal', () => {
    const whole = dealHash(shared);
    expect(readDealHash(whole)).toEqual(shared);
    for (const broken of ['', '#deal=', whole.slice(0, -1), whole.replace('.3.', '.4.'), `${whole}.`]) {
      expect(readDealHash(broken)).toBeNull();
    }
    expect(readDealHash(whole.replace('second=none', 'second=sometimes'))).toBeNull();
    const torn = whole.slice(0, 40);
    expect(routeOf('/', torn)).toEqual({ kind: 'missing', path: `/${torn}`, what: 'deal' });
  });
});

describe('where this browser sat last', () => {
  it('a table is a place to come back to while one sits there, the latest first, and no more once the seat is given up', () => {
    const storage = memoryStorage();
    rememberPlace(storage, '/daily/2028-02-29');
    notePlace(storage, '/t/ABCD2345', 0);
    expect(recentPlaces(storage)).toEqual(['/t/ABCD2345', '/daily/2028-02-29']);
    notePlace(storage, '/t/ABCD2345', null);
    expect(recentPlaces(storage)).toEqual(['/daily/2028-02-29']);
  });
});
