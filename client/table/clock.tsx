// The time left for the open step; quiet when there is no deadline.
import { useEffect, useState } from 'preact/hooks';
import { clockText, TABLE } from './strings.ts';

const SOON_MS = 10_000;

export function Clock({ dueAt }: { readonly dueAt: number | null }) {
  const [now, setNow] = useState(() => performance.now());
  useEffect(() => {
    if (dueAt === null) return;
    const timer = setInterval(() => setNow(performance.now()), 500);
    return () => clearInterval(timer);
  }, [dueAt]);
  if (dueAt === null) return null;
  const left = dueAt - now;
  const soon = left <= SOON_MS;
  return (
    <div class={soon ? 'clock soon' : 'clock'}>
      <p role="timer">{TABLE.timeLeft(clockText(left))}</p>
      <p class="spoken" role="status">
        {soon ? TABLE.soon : null}
      </p>
    </div>
  );
}
