// Decides what may happen in a class: a command causes events, or one rejection. Nothing else decides it.
import { isDeepStrictEqual } from 'node:util';
import {
  type AnalyzedChoice,
  CLASS_LIMITS,
  type ClassAims,
  type Resolved,
  type RoomRejectionCode,
  type Seat,
  type ShownStep,
  type Step,
} from '../../shared-engine/index.ts';
import { isAllowed, UNUSED } from '../aggregate/allowance.ts';
import { type Decision, reject } from '../aggregate/decision.ts';
import { MAX_EVENTS } from '../aggregate/log-limits.ts';
import type { ClassEvent } from './event.ts';
import { decideSeating, type SeatingCommand } from './seating.ts';
import {
  AIMS,
  type ClassState,
  type ClosedRound,
  type FrozenStep,
  frozenAt,
  isGuided,
  isMeantForAnother,
  mayBeTakenHome,
  playersIn,
  SCREENS,
} from './state.ts';

export type ClassCommand =
  | {
      readonly kind: 'join';
      readonly name: string;
      readonly secretHash: string;
      readonly room: string;
      readonly seat: Seat;
      /** As in the event. */
      readonly first?: number;
    }
  /** `dealt` is how many deals the teacher had seen dealt; missing where that is not known. */
  | { readonly kind: 'deal-next'; readonly dealt?: number }
  | { readonly kind: 'hold'; readonly before: Step | null; readonly dealt?: number }
  | { readonly kind: 'stand-in'; readonly player: number; readonly on: boolean }
  | { readonly kind: 'show'; readonly shown: ShownStep | null; readonly dealt?: number }
  /** `deal` is the place in the drill of the deal on the player's table. */
  | {
      readonly kind: 'aim';
      readonly player: number;
      readonly deal: number;
      readonly aims: ClassAims;
    }
  /** `deal` and `stepIndex` say which step of the drill this is. */
  | {
      readonly kind: 'advance';
      readonly deal: number;
      readonly stepIndex: number;
      readonly outcome: Resolved;
      readonly closed: boolean;
    }
  | ({ readonly kind: 'freeze' } & FrozenStep)
  | {
      readonly kind: 'analyzed';
      readonly choices: Readonly<Record<string, AnalyzedChoice>>;
      readonly rounds: readonly ClosedRound[];
    }
  | { readonly kind: 'leave'; readonly player: number }
  | { readonly kind: 'remove'; readonly player: number }
  | SeatingCommand
  | { readonly kind: 'joining'; readonly open: boolean }
  | { readonly kind: 'take-home'; readonly on: boolean }
  | { readonly kind: 'make-key'; readonly secretHash: string }
  | { readonly kind: 'revoke-key'; readonly key: number }
  | { readonly kind: 'screen-code'; readonly codeHash: string }
  | { readonly kind: 'open-screen'; readonly codeHash: string; readonly secretHash: string }
  | { readonly kind: 'end' };

/** `at` is the time of the events, in milliseconds since 1970. */
export function decideClass(state: ClassState, command: ClassCommand, at: number): Decision<ClassEvent> {
  // A player's data can be deleted after the end too.
  if (command.kind === 'leave') return decideLeaving(state, command.player);
  // The report is read after the end, at another computer perhaps.
  if (command.kind === 'analyzed') return decideAnalyzed(state, command);
  if (command.kind === 'make-key' || command.kind === 'revoke-key') return decideKey(state, command);
  // A teacher may hand the deals out, or keep them, when the class is over.
  if (state.ended && command.kind !== 'take-home')
    return command.kind === 'end' ? accept() : reject('class-over');
  if (state.seq >= MAX_EVENTS && isRepeatable(command)) return reject('used-up');
  switch (command.kind) {
    case 'join':
      return decideJoining(state, command);
    case 'deal-next':
      // Another dashboard has dealt it already: one action.
      if (command.dealt === state.dealt - 1) return accept();
      if (isMeantForAnother(state, command)) return reject('class-moved-on');
      if (isGuided(state) && state.dealt > 0 && !state.dealClosed) return reject('deal-open');
      return state.dealt < state.deals.length ? accept({ kind: 'dealt' }) : reject('no-more-deals');
    case 'hold':
      if (isMeantForAnother(state, command)) return reject('class-moved-on');
      return state.holdBefore === command.before
        ? accept()
        : accept({ kind: 'hold', before: command.before });
    case 'stand-in': {
      const { player, on } = command;
      const one = state.players[player];
      if (!one || one.left) return reject('no-such-player');
      return one.standIn === on ? accept() : accept({ kind: 'stand-in', player, on });
    }
    case 'remove': {
      const one = state.players[command.player];
      if (!one || (one.left && !one.removed)) return reject('no-such-player');
      return one.removed ? accept() : accept({ kind: 'removed', player: one.id });
    }
    case 'rename':
    case 'seat':
      return decideSeating(state, command);
    case 'joining': {
      const { open } = command;
      return state.joiningOpen === open ? accept() : accept({ kind: 'joining', open });
    }
    case 'take-home':
      return decideTakeHome(state, command.on);
    case 'show':
      if (isMeantForAnother(state, command)) return reject('class-moved-on');
      return isDeepStrictEqual(state.shown, command.shown)
        ? accept()
        : accept({ kind: 'shown', shown: command.shown });
    case 'screen-code':
      return accept({ kind: 'screen-code', codeHash: command.codeHash });
    case 'open-screen': {
      const { codeHash, secretHash } = command;
      if (state.screen.codeHash !== codeHash) return reject('wrong-screen-code');
      if (!isAllowed(state.screen.used, SCREENS, at)) return reject('too-often');
      return accept({ kind: 'screen-opened', secretHash });
    }
    case 'aim':
      return decideAim(state, command, at);
    case 'advance': {
      const { deal, stepIndex, outcome, closed } = command;
      const stands = deal === state.dealt - 1 && stepIndex === state.outcomes.length && !state.dealClosed;
      return stands ? accept({ kind: 'advanced', outcome, closed }) : reject('already-advanced');
    }
    case 'freeze': {
      const { deal, seat, step, spreads } = command;
      if (frozenAt(state, command)) return accept();
      return accept({ kind: 'frozen', deal, seat, step, spreads });
    }
    case 'end':
      return accept({ kind: 'ended' });
  }
}

/** Deals and steps are as many as the drill has, and each player is removed once; the rest may be said again and again. */
function isRepeatable(command: ClassCommand): boolean {
  switch (command.kind) {
    case 'deal-next':
    case 'advance':
    case 'freeze':
    case 'analyzed':
    case 'remove':
    case 'leave':
    case 'make-key':
    case 'revoke-key':
    case 'end':
      return false;
    case 'joining':
      return command.open;
    case 'join':
    case 'hold':
    case 'stand-in':
    case 'show':
    case 'aim':
    case 'take-home':
    case 'rename':
    case 'seat':
    case 'screen-code':
    case 'open-screen':
      return true;
  }
}

function decideJoining(
  state: ClassState,
  { kind: _, ...joining }: ClassCommand & { kind: 'join' },
): Decision<ClassEvent> {
  const rejection = joiningRejection(state);
  if (rejection !== null) return reject(rejection);
  if (playersIn(state).some((player) => player.room === joining.room && player.seat === joining.seat))
    return reject('seat-taken');
  return accept({ kind: 'joined', ...joining });
}

function decideTakeHome(state: ClassState, on: boolean): Decision<ClassEvent> {
  if (on && !mayBeTakenHome(state.drill)) return reject('tables-of-four');
  return state.takeHome === on ? accept() : accept({ kind: 'take-home', on });
}

/** Keys are counted for good, because each stays in the log. */
function decideKey(
  { keys }: ClassState,
  command: ClassCommand & { kind: 'make-key' | 'revoke-key' },
): Decision<ClassEvent> {
  if (command.kind === 'make-key') {
    const { keys: atOnce, allKeys } = CLASS_LIMITS;
    const isFull = keys.filter(({ isRevoked }) => !isRevoked).length >= atOnce || keys.length >= allKeys;
    return isFull ? reject('too-many-keys') : accept({ kind: 'key-made', secretHash: command.secretHash });
  }
  const key = keys[command.key];
  if (key === undefined) return reject('wrong-key');
  return key.isRevoked ? accept() : accept({ kind: 'key-revoked', key: key.id });
}

/** Another server may have stored the same. */
function decideAnalyzed(
  state: ClassState,
  command: ClassCommand & { kind: 'analyzed' },
): Decision<ClassEvent> {
  const found = Object.entries(command.choices).filter(([decisionId]) => !state.analyzed[decisionId]);
  const rounds = command.rounds.filter(
    ({ player, deal }) => !state.rounds.some((one) => one.player === player && one.deal === deal),
  );
  if (found.length === 0 && rounds.length === 0) return accept();
  return accept({ kind: 'analyzed', choices: Object.fromEntries(found), rounds });
}

function decideLeaving({ players }: ClassState, player: number): Decision<ClassEvent> {
  const one = players[player];
  if (!one) return reject('no-such-player');
  // Who was removed may still have the name deleted.
  return one.left && !one.removed ? accept() : accept({ kind: 'left', player });
}

/** Why nobody can join just now, or null. Those who left make room, but not without end: each of them stays in the log. */
export function joiningRejection(state: ClassState): RoomRejectionCode | null {
  if (state.ended) return 'class-over';
  if (!state.joiningOpen) return 'joining-closed';
  const { players, joins } = CLASS_LIMITS;
  const full = playersIn(state).length >= players || state.players.length >= joins;
  return full ? 'class-full' : null;
}

/** Aims named again for the same step replace the earlier ones. */
function decideAim(
  state: ClassState,
  { player, deal, aims }: ClassCommand & { kind: 'aim' },
  at: number,
): Decision<ClassEvent> {
  if (deal < 0 || deal >= state.dealt) return reject('no-round');
  const used = state.players[player]?.aimsUsed ?? UNUSED;
  if (!isAllowed(used, AIMS, at)) return reject('too-often');
  const { step, sections } = aims;
  return accept({ kind: 'aimed', player, deal, step, sections });
}

function accept(...events: readonly ClassEvent[]): Decision<ClassEvent> {
  return { ok: true, events };
}
