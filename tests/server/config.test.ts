// The settings: defaults, bounds, and names that are nearly right.
import { describe, expect, test } from 'vitest';
import { readConfig, SETTINGS } from '../../server/config.ts';

function problemsOf(environment: Readonly<Record<string, string>>): readonly string[] {
  const read = readConfig(environment);
  return read.ok ? [] : read.problems;
}

describe('the settings', () => {
  test('have a default each, and leave one core free for the tables', () => {
    const read = readConfig({});
    expect(read.ok && read.config.review.workers).toBeGreaterThanOrEqual(1);
    expect(read).toMatchObject({
      ok: true,
      config: { port: 8080, metrics: null, storage: { kind: 'sqlite' } },
    });
  });

  test('of reviews are read, and out of bounds rejected by name', () => {
    expect(readConfig({ REVIEW_WORKERS: '0', REVIEW_DEPTH: 'shallow', REVIEW_MAX_QUEUE: '3' })).toMatchObject(
      { ok: true, config: { review: { workers: 0, depth: 'shallow', maxQueue: 3 } } },
    );
    expect(problemsOf({ REVIEW_WORKERS: '-1', REVIEW_DEPTH: 'bottomless' }).join()).toMatch(
      /REVIEW_WORKERS.*REVIEW_DEPTH/,
    );
    expect(problemsOf({ METRICS_PORT: 'many' })).toEqual(['METRICS_PORT: must be a number']);
    const named = problemsOf({ PORT: '99999', BOT_DELAY_MS: 'soon' }).map((problem) => problem.split(':')[0]);
    expect(named).toEqual(['PORT', 'BOT_DELAY_MS']);
  });

  test('of the public address are an origin that phones are sent to, or nothing', () => {
    const addressIn = (PUBLIC_ADDRESS: string) => {
      const read = readConfig({ PUBLIC_ADDRESS });
      return read.ok ? read.config.publicAddress : read.problems;
    };
    expect(addressIn('')).toBeNull();
    expect(addressIn('https://club.example/')).toBe('https://club.example');
    expect(addressIn('http://192.168.0.12:8080')).toBe('http://192.168.0.12:8080');
    const words = 'PUBLIC_ADDRESS: must be an address such as https://club.example, without a path';
    for (const wrong of ['club.example', 'ftp://club.example', 'https://club.example/t', 'https://'])
      expect(addressIn(wrong)).toEqual([words]);
  });

  test('that are set to nothing count as not set', () => {
    expect(readConfig({ PORT: '', STORE: '' })).toEqual(readConfig({}));
  });
});

describe('the store', () => {
  const DATABASE_URL = 'postgres://quadrille@db.example/rooms';

  test('is a database where one is named, else a file, unless STORE says which', () => {
    const kindOf = (environment: Readonly<Record<string, string>>) => {
      const read = readConfig(environment);
      return read.ok && read.config.storage.kind;
    };
    expect(kindOf({})).toBe('sqlite');
    expect(kindOf({ DATABASE_URL })).toBe('postgres');
    expect(kindOf({ STORE: 'postgres', DATABASE_URL })).toBe('postgres');
    expect(kindOf({ STORE: 'sqlite', DATABASE_URL })).toBe('sqlite');
    expect(kindOf({ STORE: 'memory', DATABASE_URL })).toBe('memory');
  });

  test('that is to be a database needs one named', () => {
    expect(problemsOf({ STORE: 'postgres' })).toEqual(['DATABASE_URL: must be set where STORE is postgres']);
    expect(problemsOf({ DATABASE_URL: 'mysql://db.example/rooms' })).toEqual([
      'DATABASE_URL: must begin with postgres://',
    ]);
  });
});

describe('a name within two letters of a setting', () => {
  test.each([
    ['MAX_ROOM', 'MAX_ROOMS'],
    ['BOT_DELAY', null],
    ['BOT_DELAYMS', 'BOT_DELAY_MS'],
    ['RETENTOIN_DAYS', 'RETENTION_DAYS'],
    ['REVIEW_WORKER', 'REVIEW_WORKERS'],
    ['ALLOWED_ORIGNS', 'ALLOWED_ORIGINS'],
    ['PROT', 'PORT'],
    ['STORES', 'STORE'],
  ])('%s is rejected at the start with the right one, or left alone', (name, meant) => {
    expect(problemsOf({ [name]: '1' })).toEqual(
      meant === null ? [] : [`${name}: is no setting; write ${meant}`],
    );
  });

  test('is not what a shell or a system sets anyway', () => {
    const usual = [
      'HOME',
      'PATH',
      'PWD',
      'USER',
      'LANG',
      'TERM',
      'SHELL',
      'HOSTNAME',
      'TZ',
      'EDITOR',
      'NODE_ENV',
    ];
    expect(problemsOf(Object.fromEntries(usual.map((name) => [name, 'x'])))).toEqual([]);
  });

  test('is not another setting', () => {
    for (const name of SETTINGS) expect(problemsOf({ [name]: '' })).toEqual([]);
  });
});
