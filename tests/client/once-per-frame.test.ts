// Messages that come within one frame are handed on together, in their order, and none twice.
import { expect, it } from 'vitest';
import { oncePerFrame } from '../../client/connection/once-per-frame.ts';

it('messages are handed on at the next frame, all together and in their order, and a late timer finds none left', () => {
  const due: (() => void)[] = [];
  const seen: string[] = [];
  const receive = oncePerFrame(
    (message: string) => seen.push(message),
    (run) => due.push(run),
  );
  receive('a');
  receive('b');
  expect([seen, due.length]).toEqual([[], 1]);
  due[0]!();
  expect(seen).toEqual(['a', 'b']);
  receive('c');
  due[1]!();
  due[0]!();
  expect([seen, due.length]).toEqual([['a', 'b', 'c'], 2]);
});
