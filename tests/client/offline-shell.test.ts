// The first document, which is read before any script has come.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { FRONT } from '../../client/app/front-strings.ts';

const html = readFileSync(path.resolve(import.meta.dirname, '../../client/index.html'), 'utf8');

describe('the first document', () => {
  it('the first document says what the front page will say, word for word', () => {
    expect(html).toContain(FRONT.promise);
  });

  it('the first document holds nothing that the content policy would block', () => {
    expect(html).not.toMatch(/<style|style=|<script(?![^>]*src=)|\son\w+=/);
  });
});
