// Asks now and then whether the server is back, while a round of its table goes on in the page (rule G4).
import type { Cancel, StartTimer } from '../connection/socket.ts';

/** Pause between two looks, in milliseconds. */
const LOOK_MS = 15_000;

export interface ServerWatchPorts {
  /** Whether the server answers, and still has the table. */
  readonly isThere: () => Promise<boolean>;
  readonly startTimer: StartTimer;
  readonly onChange: (isBack: boolean) => void;
}

export interface ServerWatch {
  /** Looks now instead of waiting out the pause. */
  readonly look: () => void;
  readonly stop: () => void;
}

export function watchServer({ isThere, startTimer, onChange }: ServerWatchPorts): ServerWatch {
  let wasThere = false;
  let cancel: Cancel = () => {};
  // A look whose answer comes after the next one began, or after the end, says nothing any more.
  let nth = 0;

  async function look(): Promise<void> {
    cancel();
    const own = ++nth;
    const isBack = await isThere();
    if (own !== nth) return;
    if (isBack !== wasThere) onChange(isBack);
    wasThere = isBack;
    cancel = startTimer(LOOK_MS, () => void look());
  }

  void look();
  return {
    look: () => void look(),
    stop() {
      nth++;
      cancel();
    },
  };
}
