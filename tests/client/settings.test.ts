// What this browser remembers, and how that reaches the document, the rack and the ears.
import { describe, expect, it } from 'vitest';
import { openApp } from '../../client/app/app-state.ts';
import { applySettings } from '../../client/app/apply-settings.ts';
import { readSettings, writeSettings } from '../../client/storage/settings.ts';
import { memoryStorage } from '../kit/memory-storage.ts';

describe('settings', () => {
  it('start quiet, marked and at their own size, and come back as they were left', () => {
    const memory = memoryStorage();
    const first = readSettings(memory);
    expect(first).toMatchObject({
      textSize: 100,
      indexMarks: true,
      sort: 'suit',
      still: false,
      sound: false,
    });
    const changed = {
      ...first,
      name: 'Runa',
      textSize: 175 as const,
      indexMarks: false,
      sort: 'number' as const,
      still: true,
      sound: true,
      deadline: 60,
    };
    writeSettings(memory, changed);
    expect(readSettings(memory)).toEqual(changed);
  });

  it('ignores what nobody could have chosen', () => {
    const memory = memoryStorage();
    memory.write('text-size', '700');
    memory.write('first-sort', 'colour');
    memory.write('deadline', '1');
    expect(readSettings(memory)).toMatchObject({ textSize: 100, sort: 'suit', deadline: null });
  });

  it('are written on the document where the styles read them', () => {
    const dataset: DOMStringMap = {};
    applySettings({ textSize: 150, indexMarks: false, reduceMotion: true }, { dataset });
    expect(dataset).toEqual({ text: '150', marks: 'off', motion: 'still' });
  });

  it('a wish for another order replaces what the rack remembers, and nothing else does', () => {
    const storage = memoryStorage();
    storage.write('sort', 'own');
    const app = openApp({
      storage,
      place: () => ({ pathname: '/', hash: '' }),
      origin: 'https://table.example',
      showPath() {},
      onReturn() {},
      freshDeal: () => {
        throw new Error('no deal was asked for');
      },
    });
    app.change({ sound: true });
    expect(storage.read('sort')).toBe('own');
    app.change({ sort: 'number' });
    expect(storage.read('sort')).toBe('number');
  });
});
