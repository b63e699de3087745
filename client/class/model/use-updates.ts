// Keeps a view of a class up to date by long polling: the server answers when something has changed.
import { useEffect, useState } from 'preact/hooks';
import { call, type Failure } from '../../connection/api.ts';
import type { Schema } from '../../connection/frame.ts';
import { CLASS } from './strings.ts';

export interface Updates<T> {
  readonly value: T | null;
  /** Why no update comes; null while all is well. What may be seen no more is taken away with it. */
  readonly problem: string | null;
  /** When the value came, in milliseconds of the page's own clock. */
  readonly at: number;
}

/** Pause before a failed request is sent again, in milliseconds. */
const RETRY_MS = 2000;

/** What was shown is deleted, or this browser may not see it any more. */
const LOST = ['no-such-class', 'not-the-teacher', 'not-seated'];

/** What a page says instead of the server's sentence, by the code of the rejection. */
type Words = Readonly<Record<string, string>>;

const OF_CLASS: Words = { 'no-such-class': CLASS.deleted };

/** Failures that pass by themselves; after any other the page stops asking. */
const TEMPORARY = ['unreachable', 'unclear', 'try-later', 'too-fast'];

/** Whether what was shown goes away with this failure. */
export function isLost({ code }: Failure): boolean {
  return LOST.includes(code);
}

export function afterFailure<T>(
  { value, at }: Updates<T>,
  failure: Failure,
  words: Words = OF_CLASS,
): Updates<T> {
  const { code, message } = failure;
  return { value: isLost(failure) ? null : value, problem: words[code] ?? message, at };
}

export function useUpdates<T extends { readonly version: number }>(
  path: string,
  schema: Schema<T>,
  words: Words = OF_CLASS,
): Updates<T> {
  const [updates, setUpdates] = useState<Updates<T>>({ value: null, problem: null, at: 0 });
  useEffect(() => {
    let mounted = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    async function poll(seen: number | null) {
      const answer = await call(seen === null ? path : `${path}?seen=${seen}`, null, schema, {
        method: 'GET',
      });
      if (!mounted) return;
      if (answer.ok) {
        setUpdates({ value: answer.value, problem: null, at: performance.now() });
        return void poll(answer.value.version);
      }
      setUpdates((before) => afterFailure(before, answer, words));
      if (TEMPORARY.includes(answer.code)) timer = setTimeout(() => void poll(null), RETRY_MS);
    }
    void poll(null);
    return () => {
      mounted = false;
      clearTimeout(timer);
    };
  }, [path, schema, words]);
  return updates;
}

/** The page's own clock in milliseconds, renewed once a second. */
export function useSeconds(): number {
  const [now, setNow] = useState(performance.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(performance.now()), 1000);
    return () => clearInterval(timer);
  }, []);
  return now;
}
