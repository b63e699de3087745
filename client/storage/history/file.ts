// A history as a file: written in lines, read in pieces, so that the page stays alive meanwhile.
import {
  type History,
  type HistoryRead,
  historyLines,
  historyReader,
  MAX_HISTORY_BYTES,
} from '../../../shared-engine/index.ts';

/** Lines between two pauses. */
const LINES_AT_ONCE = 100;
/** No line of a history is longer; another kind of file may have no line at all. */
const MAX_LINE = 2_000_000;

export async function readHistoryFile(file: Blob, pause: () => Promise<void>): Promise<HistoryRead> {
  if (file.size > MAX_HISTORY_BYTES) return { ok: false, problem: { code: 'too-large' } };
  const reader = historyReader();
  let since = 0;
  for await (const line of linesOf(file)) {
    const problem = reader.take(line);
    if (problem) return { ok: false, problem };
    if (++since < LINES_AT_ONCE) continue;
    since = 0;
    await pause();
  }
  return reader.end();
}

/** What the file is made of. */
export function historyFileParts(history: History): string[] {
  return [...historyLines(history)];
}

async function* linesOf(file: Blob): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  const reader = file.stream().getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    rest += done ? decoder.decode() : decoder.decode(value, { stream: true });
    const lines = rest.split('\n');
    rest = lines.pop() ?? '';
    yield* lines;
    if (done || rest.length > MAX_LINE) break;
  }
  if (rest !== '') yield rest;
}
