// Follows a page of a class: each question is left open by the server until there is something new.
import { useEffect, useState } from 'preact/hooks';
import { call } from '../connection/api.ts';
import type { Schema } from '../connection/frame.ts';

export interface News<T> {
  readonly value: T | null;
  /** Why nothing new comes; null while all is well. */
  readonly problem: string | null;
  /** Asked in vain: the teacher's secret is not in this browser, or there is no such class. */
  readonly refused: boolean;
  /** On the page's own clock, in milliseconds, when the value came. */
  readonly at: number;
}

/** Pause before a question that was not answered is asked again, in milliseconds. */
const AGAIN_MS = 2000;

/** Troubles that pass by themselves. */
const PASSING = ['unreachable', 'try-later', 'too-fast'];

export function useNews<T extends { readonly version: number }>(path: string, schema: Schema<T>): News<T> {
  const [news, setNews] = useState<News<T>>({ value: null, problem: null, refused: false, at: 0 });
  useEffect(() => {
    let on = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    async function ask(seen: number | null) {
      const answer = await call(seen === null ? path : `${path}?seen=${seen}`, null, schema, 'GET');
      if (!on) return;
      if (answer.ok) {
        setNews({ value: answer.value, problem: null, refused: false, at: performance.now() });
        return void ask(answer.value.version);
      }
      const refused = !PASSING.includes(answer.code);
      setNews((before) => ({ ...before, problem: answer.sentence, refused }));
      if (!refused) timer = setTimeout(() => void ask(null), AGAIN_MS);
    }
    void ask(null);
    return () => {
      on = false;
      clearTimeout(timer);
    };
  }, [path, schema]);
  return news;
}

/** The page's own clock, once a second. */
export function useSeconds(): number {
  const [now, setNow] = useState(performance.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(performance.now()), 1000);
    return () => clearInterval(timer);
  }, []);
  return now;
}
