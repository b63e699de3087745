// The container files against general-purpose linters (dockerfile-utils, dclint), and against the scripts they rely on.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { DCLinter } from 'dclint';
import { validate } from 'dockerfile-utils';
import { describe, expect, test } from 'vitest';
import { readConfig, SETTINGS } from '../../server/config.ts';

const root = new URL('../../', import.meta.url).pathname;
const dockerfile = readFileSync(`${root}docker/Dockerfile`, 'utf8');

test('the Dockerfile has nothing the linter objects to', () => {
  expect(validate(dockerfile)).toEqual([]);
  expect(validate('FORM node\nRUN')).not.toEqual([]);
});

test('everything the Dockerfile copies is there', () => {
  const copied = [...dockerfile.matchAll(/^COPY (?!--from)(.+) \S+$/gm)].flatMap((match) =>
    match[1]!.split(' '),
  );
  expect(copied.length).toBeGreaterThan(5);
  expect(copied.filter((path) => !existsSync(root + path))).toEqual([]);
});

test('the image builds by the same tools as the build script', () => {
  const { build } = JSON.parse(readFileSync(`${root}package.json`, 'utf8')).scripts;
  for (const tool of ['tsc -b', 'vite build --config client/vite.config.ts']) {
    expect(build).toContain(tool);
    expect(dockerfile).toContain(tool);
  }
});

const COMPOSE = readdirSync(`${root}docker`).filter((name) => name.startsWith('compose'));

describe.each(COMPOSE)('%s', (name) => {
  const text = readFileSync(`${root}docker/${name}`, 'utf8');

  test('has nothing the linter calls an error', () => {
    const linter = new DCLinter({ rules: {}, quiet: false, debug: false, exclude: [] });
    const results = linter.lintFiles([`${root}docker/${name}`], false);
    expect(results).toHaveLength(1);
    expect(results[0]!.messages.filter((message: { type: string }) => message.type === 'error')).toEqual([]);
  });

  test('gives the servers settings that there are and that they can use', () => {
    const set = [...text.matchAll(/^ {4,6}([A-Z_]+): "?(.*?)"?$/gm)].map(([, key, value]) => ({
      key: key!,
      value: value!.replaceAll(/\$\{\w+(?::-(.*?)|:\?.*?)\}/g, (_, preset) => preset ?? 'secret'),
    }));
    const ours = set.filter(({ key }) => !key.startsWith('POSTGRES_'));
    expect(ours.length).toBeGreaterThan(4);
    expect(ours.map(({ key }) => key).filter((key) => !SETTINGS.includes(key))).toEqual([]);
    const read = readConfig(Object.fromEntries(ours.map(({ key, value }) => [key, value])));
    expect(read).toMatchObject({ ok: true, config: { metrics: { port: 9100 } } });
  });

  test('publishes no port of the metrics, and confines everything that it starts', () => {
    const published = [...text.matchAll(/^ {6}- "[\d.]+:\d+:(\d+)"$/gm)].map(([, port]) => port);
    expect(published).toEqual([name === 'compose.yaml' ? '8080' : '8443']);
    for (const limit of [
      'read_only: true',
      'no-new-privileges:true',
      'cap_drop:\n',
      'pids_limit: ',
      'mem_limit: ',
      'cpus: ',
    ]) {
      expect(text).toContain(limit);
    }
  });
});

test('the proxy asks whether a server is ready, and asks at a port that the servers have', () => {
  const proxy = readFileSync(`${root}docker/haproxy.cfg`, 'utf8');
  expect(proxy).toContain('option httpchk GET /readyz');
  const compose = readFileSync(`${root}docker/compose.postgres.yaml`, 'utf8');
  const servers = [...proxy.matchAll(/^ {2}server (\w+) \w+:(\d+)$/gm)].map(([, server, port]) => [
    server,
    port,
  ]);
  expect(servers).toEqual([
    ['first', '8080'],
    ['second', '8080'],
  ]);
  for (const [server] of servers) expect(compose).toContain(`\n  ${server}:\n    <<: *server\n`);
});
