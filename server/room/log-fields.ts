// What the log may say of an event: kinds, seats and steps; never a tile, a name, a secret or a seed.
import type { RoundEvent } from '../../shared-engine/index.ts';
import type { RoomEvent } from './event.ts';

export type LogFields = Readonly<Record<string, string | number | boolean>>;

/** Built up field by field, so that a new kind of event says nothing until somebody decides what it may say. */
export function logFieldsOf(event: RoomEvent): LogFields {
  switch (event.kind) {
    case 'opened':
      return { event: event.kind, mode: event.mode, card: event.card.kind };
    case 'seat-taken':
    case 'seat-vacated':
    case 'seat-renamed':
    case 'bot-invited':
    case 'invitation-revoked':
    case 'external-bot-seated':
    case 'seats-swapped':
    case 'said':
      return { event: event.kind, seat: event.seat };
    case 'bot-seated':
      return { event: event.kind, seat: event.seat, style: event.style };
    case 'connected':
    case 'disconnected':
    case 'secret-issued':
    case 'secret-confirmed':
    case 'old-secret-shown':
      return { event: event.kind, seat: event.seat };
    case 'timer-claimed':
      return { event: event.kind, restarted: event.others.length === 0 };
    case 'terms-changed':
      return { event: event.kind };
    case 'controls-changed':
      return { event: event.kind, held: event.controls.holdBefore ?? 'no' };
    case 'more-time':
      return { event: event.kind, seconds: event.seconds };
    case 'ready':
      return { event: event.kind, seat: event.seat, ready: event.ready };
    case 'round':
      return roundFields(event.event);
    case 'closed':
      return { event: 'room-closed' };
  }
}

function roundFields(event: RoundEvent): LogFields {
  switch (event.kind) {
    case 'dealt':
      return { event: event.kind, dealer: event.deal.dealer };
    case 'submitted':
      return { event: event.kind, seat: event.seat, step: event.step, by: event.pass.by };
    case 'withdrawn':
      return { event: event.kind, seat: event.seat, step: event.step };
    case 'voted':
    case 'asked':
      return { event: event.kind, seat: event.seat, by: event.by };
    case 'resolved':
    case 'advanced':
      return {
        event: event.kind,
        step: event.outcome.kind === 'move' ? event.outcome.step : event.outcome.kind,
      };
    case 'closed':
      return { event: 'round-closed' };
  }
}
