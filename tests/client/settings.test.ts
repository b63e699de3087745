// The settings that this browser remembers, and how they reach the document and the rack.
import { describe, expect, it } from 'vitest';
import { openApp } from '../../client/app/app-state.ts';
import { applySettings } from '../../client/app/apply-settings.ts';
import { readSettings, writeSettings } from '../../client/storage/settings.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { appAtFront } from '../kit/app-at-front.ts';
import { memoryStorage } from '../kit/memory-storage.ts';

describe('settings', () => {
  it('settings start without sound, with index marks and at normal size, and come back as they were left', () => {
    const storage = memoryStorage();
    const first = readSettings(storage);
    expect(first).toMatchObject({
      textSize: 100,
      indexMarks: true,
      sort: 'suit',
      reduceMotion: false,
      sound: false,
      notices: false,
    });
    const changed = {
      ...first,
      name: 'Runa',
      textSize: 175 as const,
      indexMarks: false,
      sort: 'number' as const,
      reduceMotion: true,
      sound: true,
      notices: true,
      ways: {
        alone: { ...STANDARD_TERMS.alone, whoIsEast: 'always' as const },
        friends: { ...STANDARD_TERMS.friends, deadline: 60 },
      },
    };
    writeSettings(storage, changed);
    expect(readSettings(storage)).toEqual(changed);
  });

  it('a stored setting that nobody could have chosen is ignored', () => {
    const storage = memoryStorage();
    storage.write('text-size', '700');
    storage.write('first-sort', 'color');
    storage.write('ways-friends', '{"deadline":1,"blindPasses":false}');
    storage.write('ways-alone', 'none of ours');
    expect(readSettings(storage)).toMatchObject({
      textSize: 100,
      sort: 'suit',
      ways: { alone: STANDARD_TERMS.alone, friends: { ...STANDARD_TERMS.friends, blindPasses: false } },
    });
  });

  it('settings are written on the document where the styles read them', () => {
    const dataset: DOMStringMap = {};
    applySettings({ textSize: 150, indexMarks: false, reduceMotion: true }, { dataset });
    expect(dataset).toEqual({ text: '150', marks: 'off', motion: 'reduced' });
  });

  it('choosing another order replaces what the rack remembers, and no other setting does', () => {
    const storage = memoryStorage();
    storage.write('sort', 'custom');
    const app = appAtFront(storage);
    app.change({ sound: true });
    expect(storage.read('sort')).toBe('custom');
    app.change({ sort: 'number' });
    expect(storage.read('sort')).toBe('number');
  });
});

describe('a fresh deal in the page', () => {
  it('W1 W2 is dealt and played by the ways of whoever plays alone', () => {
    const app = appAtFront();
    const { alone, friends } = app.settings.value.ways;
    expect(app.freshDeal().deal.dealer).toBe(0);
    app.change({
      ways: { friends, alone: { ...alone, whoIsEast: 'never', secondCharleston: 'none', passLog: false } },
    });
    const fresh = app.freshDeal();
    expect(fresh.deal.dealer).toBe(1);
    expect(fresh.ways).toEqual({ secondCharleston: 'none', blindPasses: true, courtesy: 'by-asking' });
  });
});

describe('an open sheet', () => {
  /** A browser's history of paths, and an app at a table in it. */
  function appInHistory(history = ['/', '/t/ABCD2345'].map((path) => ({ path, over: false }))) {
    let returned = () => {};
    const goBack = () => {
      history.pop();
      returned();
    };
    const app = openApp({
      storage: memoryStorage(),
      place: () => ({ pathname: history.at(-1)?.path ?? '/', hash: '', over: history.at(-1)?.over === true }),
      origin: 'https://table.example',
      showPath: (path, over) => history.push({ path, over }),
      renamePath: (path) => history.splice(-1, 1, { path, over: false }),
      goBack,
      onReturn: (run) => {
        returned = run;
        return () => {};
      },
      newSeed: () => '0'.repeat(64),
      random: { below: () => 0 },
    });
    return { app, goBack, history };
  }

  it('is closed by going back, and only the next step back leaves the table', () => {
    const { app, goBack } = appInHistory();
    const table = app.route.value;
    app.show('help');
    goBack();
    expect([app.sheet.value, app.route.value]).toEqual([null, table]);
    // The same object: the screen of the table is not made anew.
    expect(app.route.value).toBe(table);
    goBack();
    expect(app.route.value).toEqual({ kind: 'front' });
  });

  it('is closed before what it lies over, one step back for each, and a card closed by its own button leaves none', () => {
    const { app, goBack } = appInHistory();
    const table = app.route.value;
    let cards = 1;
    const closeCard = app.layOver(() => cards--);
    app.show('help');
    goBack();
    expect([app.sheet.value, cards, app.route.value]).toEqual([null, 1, table]);
    goBack();
    expect([cards, app.route.value]).toEqual([0, table]);
    closeCard();
    const closeAgain = app.layOver(() => cards--);
    closeAgain();
    goBack();
    expect([cards, app.route.value, app.left.value]).toEqual([0, { kind: 'front' }, table]);
  });

  it('leaves no step behind for the page after a reload', () => {
    const { app, history } = appInHistory();
    app.layOver(() => {});
    const later = appInHistory(history);
    later.app.layOver(() => {});
    later.goBack();
    expect([history.length, later.app.route.value.kind]).toEqual([2, 'room']);
    later.goBack();
    expect(later.app.route.value.kind).toBe('front');
  });

  it('leaves no step behind in the history when it is closed by its own button', () => {
    const { app, goBack } = appInHistory();
    app.show('settings');
    app.show(null);
    expect([app.sheet.value, app.route.value.kind]).toEqual([null, 'room']);
    goBack();
    expect(app.route.value).toEqual({ kind: 'front' });
  });
});
