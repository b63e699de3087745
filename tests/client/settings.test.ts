// The settings that this browser remembers, and how they reach the document and the rack.
import { describe, expect, it } from 'vitest';
import { openApp } from '../../client/app/app-state.ts';
import { applySettings } from '../../client/app/apply-settings.ts';
import { readSettings, writeSettings } from '../../client/storage/settings.ts';
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
    });
    const changed = {
      ...first,
      name: 'Runa',
      textSize: 175 as const,
      indexMarks: false,
      sort: 'number' as const,
      reduceMotion: true,
      sound: true,
      deadline: 60,
    };
    writeSettings(storage, changed);
    expect(readSettings(storage)).toEqual(changed);
  });

  it('a stored setting that nobody could have chosen is ignored', () => {
    const storage = memoryStorage();
    storage.write('text-size', '700');
    storage.write('first-sort', 'color');
    storage.write('deadline', '1');
    expect(readSettings(storage)).toMatchObject({ textSize: 100, sort: 'suit', deadline: null });
  });

  it('settings are written on the document where the styles read them', () => {
    const dataset: DOMStringMap = {};
    applySettings({ textSize: 150, indexMarks: false, reduceMotion: true }, { dataset });
    expect(dataset).toEqual({ text: '150', marks: 'off', motion: 'reduced' });
  });

  it('choosing another order replaces what the rack remembers, and no other setting does', () => {
    const storage = memoryStorage();
    storage.write('sort', 'custom');
    const app = openApp({
      storage,
      place: () => ({ pathname: '/', hash: '' }),
      origin: 'https://table.example',
      showPath() {},
      onReturn: () => () => {},
      freshDeal: () => {
        throw new Error('no deal was asked for');
      },
    });
    app.change({ sound: true });
    expect(storage.read('sort')).toBe('custom');
    app.change({ sort: 'number' });
    expect(storage.read('sort')).toBe('number');
  });
});
