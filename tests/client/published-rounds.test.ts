// The rounds of a published drill on a device: sent, answered, kept until they are counted, and changed in two tabs.
import { describe, expect, it } from 'vitest';
import {
  answered,
  begunAnew,
  isGone,
  isSendingDue,
  playedOn,
  repaired,
  repairOf,
  roundsToSend,
  takenOver,
} from '../../client/class/published/rounds.ts';
import { DRILL, playWords, roundWords } from '../../client/class/published/strings.ts';
import {
  changeDrill,
  type DrillOnDevice,
  drillKey,
  type PlayedRound,
  readDrillOnDevice,
} from '../../client/storage/published.ts';
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import { ROOM_REJECTIONS, type RoomRejectionCode } from '../../shared-engine/protocol/rejections.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { publishedDrill } from '../kit/published-device.ts';
import { seedNamed } from '../kit/rounds.ts';

const DEAL = 'deal-1';
const drill = publishedDrill();
const QUESTION = { step: 'vote', text: 'Why?' } as const;

function deviceWith(part: Partial<PlayedRound>, state: 'open' | 'over' = 'open'): DrillOnDevice {
  const begun = begunAnew(takenOver(null, { ...drill, state }), DEAL);
  return { ...begun, rounds: { [DEAL]: { ...begun.rounds[DEAL]!, ...part } } };
}

function roundOf(device: DrillOnDevice): PlayedRound {
  return device.rounds[DEAL]!;
}

function told(device: DrillOnDevice, code: RoomRejectionCode | 'unclear'): DrillOnDevice {
  const message = code === 'unclear' ? 'unclear' : ROOM_REJECTIONS[code];
  return answered(device, { deal: DEAL, ...roundOf(device) }, { ok: false, code, message });
}

function counted(device: DrillOnDevice, asked: boolean): DrillOnDevice {
  const released = { deal: DEAL, through: null, steps: [] };
  const value = { counted: true, asked, released };
  return answered(device, { deal: DEAL, ...roundOf(device) }, { ok: true, value });
}

describe('the rounds of a published drill on a device', () => {
  it('stay playable on the card of the drill when its last day is over and no card is sent any more', () => {
    const seed = seedNamed('taken over');
    const deal = { seed, dealer: 0, prepared: [[], [], [], []] } as const;
    const deals = [{ id: DEAL, title: null, task: null, comments: null, deal, script: [] }];
    const card = { ...HOUSE_CARD, name: 'Spring card' };
    const open = takenOver(null, publishedDrill({ deals, card }));
    const over = takenOver(open, publishedDrill({ state: 'over' }));
    expect(over.drill).toMatchObject({ state: 'over', deals: [{ id: DEAL }], card: { name: 'Spring card' } });
    // On the house card there is none from the start.
    expect(takenOver(over, publishedDrill({ deals })).drill.card).toBeNull();
  });

  it('wait with their choices where the last day was over, and are sent when the drill is open again', () => {
    const late = told(deviceWith({ state: 'waiting', questions: [QUESTION] }), 'drill-over');
    expect(roundOf(late)).toMatchObject({ state: 'waiting', questions: [QUESTION] });
    expect([roundsToSend(late), isSendingDue(late)]).toEqual([[], false]);
    expect(roundWords(roundOf(late), { counted: false, state: late.drill.state })).toMatch(
      /sent when you open this page after your teacher/,
    );
    const again = takenOver(late, publishedDrill());
    expect(roundsToSend(again).map(([deal]) => deal)).toEqual([DEAL]);
  });

  it('wait with their choices for another name or other questions, and are then sent under the same id', () => {
    for (const code of ['bad-name', 'bad-question'] as const) {
      const device = told(deviceWith({ state: 'waiting', questions: [QUESTION] }), code);
      expect(roundOf(device)).toMatchObject({ state: 'waiting', message: ROOM_REJECTIONS[code] });
      expect([repairOf(roundOf(device)), roundsToSend(device)]).toEqual([code, []]);
      const changed = repaired(device, DEAL, []);
      expect(roundsToSend(changed)).toEqual([
        [DEAL, { ...roundOf(device), questions: [], code: null, message: null }],
      ]);
    }
  });

  it('wait after an answer that says nothing of the round, and are given up after one that judges it', () => {
    const waiting = deviceWith({ state: 'waiting' });
    for (const code of ['busy', 'try-later', 'too-fast', 'unclear'] as const)
      expect(told(waiting, code)).toEqual(waiting);
    expect([roundsToSend(waiting).length, isSendingDue(waiting)]).toEqual([1, true]);
    // Only a newer page can send it, which is loaded for it.
    const unread = told(waiting, 'bad-request');
    expect([roundsToSend(unread).length, isSendingDue(unread)]).toEqual([1, false]);
    for (const code of ['round-not-played', 'drill-full'] as const) {
      expect(roundOf(told(waiting, code)).state).toBe('rejected');
    }
    expect(playWords(roundOf(told(waiting, 'round-not-played')), false)).toBe(DRILL.play);
  });

  it('stay playable after a failure of the server, unless there is no such drill', () => {
    const failed = (code: string) => isGone({ ok: false, code, message: '' });
    expect(['try-later', 'too-fast', 'outdated', 'unclear', 'wrong-key'].some(failed)).toBe(false);
    expect(failed('no-such-drill')).toBe(true);
  });

  it('are said to be counted without their questions where these were not stored', () => {
    const words = (device: DrillOnDevice) => roundWords(roundOf(device), { counted: true, state: 'open' });
    const waiting = deviceWith({ state: 'waiting', questions: [QUESTION] });
    expect(words(counted(waiting, false))).toBe(`Played and counted. ${DRILL.notAsked}`);
    expect(words(counted(waiting, true))).toBe('Played and counted');
    expect(words(counted(deviceWith({ state: 'waiting' }), false))).toBe('Played and counted');
  });

  it('keep what another tab has stored meanwhile, and are sent as the table that ended first had them', () => {
    const storage = memoryStorage();
    const empty = { code: drill.code, device: null, isStored: true, isDeleted: false };
    const first = changeDrill(storage, empty, () => takenOver(null, drill));
    const second = changeDrill(storage, empty, (now) => now);
    const asked = () => ({ questions: [QUESTION] });
    changeDrill(storage, first, (now) => now && playedOn(now, DEAL, asked));
    changeDrill(storage, { ...second, device: first.device }, (now) => now && playedOn(now, 'deal-2', asked));
    const both = readDrillOnDevice(storage, drill.code)!;
    expect(Object.keys(both.rounds)).toEqual([DEAL, 'deal-2']);
    const ended = playedOn(both, DEAL, () => ({ state: 'waiting' }));
    expect(playedOn(ended, DEAL, () => ({ questions: [], state: 'playing' }))).toBe(ended);
    // An answer to a round that has been replaced since.
    const sent = { deal: DEAL, ...roundOf(ended) };
    const anew = begunAnew(ended, DEAL);
    expect(answered(anew, sent, { ok: false, code: 'round-not-played', message: 'no' })).toBe(anew);
  });

  it('are not stored again by a tab that is still open after they were deleted', () => {
    const storage = memoryStorage();
    const empty = { code: drill.code, device: null, isStored: true, isDeleted: false };
    const open = changeDrill(storage, empty, () => takenOver(null, drill));
    storage.remove(drillKey(drill.code));
    const asked = () => ({ questions: [QUESTION] });
    let on = changeDrill(storage, open, (now) => now && playedOn(now, DEAL, asked));
    on = changeDrill(storage, on, (now) => now && playedOn(now, 'deal-2', asked));
    expect(Object.keys(on.device!.rounds)).toEqual([DEAL, 'deal-2']);
    expect([on.isStored, readDrillOnDevice(storage, drill.code)]).toEqual([false, null]);
  });

  it('stay on the page where nothing can be stored', () => {
    const storage = { ...memoryStorage(), write: () => false };
    const opened = changeDrill(
      storage,
      { code: drill.code, device: null, isStored: true, isDeleted: false },
      () => takenOver(null, drill),
    );
    const played = changeDrill(
      storage,
      opened,
      (now) => now && playedOn(now, DEAL, () => ({ questions: [QUESTION] })),
    );
    expect([played.isStored, played.device?.rounds[DEAL]?.questions]).toEqual([false, [QUESTION]]);
  });
});
