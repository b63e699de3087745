// What the log may say of an event: kinds, seats and steps; never a tile, a name, a key or a seed.
import type { RoundEvent } from '../../shared-engine/index.ts';
import type { RoomEvent } from './event.ts';

export type Story = Readonly<Record<string, string | number | boolean>>;

/** Built up field by field, so that a new kind of event says nothing until somebody decides what it may say. */
export function storyOf(event: RoomEvent): Story {
  switch (event.kind) {
    case 'opened':
      return { event: event.kind, door: event.door, card: event.card.kind };
    case 'seat-taken':
    case 'seat-freed':
      return { event: event.kind, seat: event.seat };
    case 'bot-seated':
      return { event: event.kind, seat: event.seat, style: event.style };
    case 'came':
    case 'went':
    case 'key-changed':
      return { event: event.kind, seat: event.seat };
    case 'in-hand':
      return { event: event.kind, anew: event.others.length === 0 };
    case 'led':
      return { event: event.kind, held: event.lead.holdBefore ?? 'no' };
    case 'more-time':
      return { event: event.kind, seconds: event.seconds };
    case 'class':
      return { event: event.kind };
    case 'ready':
      return { event: event.kind, seat: event.seat, ready: event.ready };
    case 'round':
      return roundStory(event.event);
    case 'closed':
      return { event: 'room-closed' };
  }
}

function roundStory(event: RoundEvent): Story {
  switch (event.kind) {
    case 'dealt':
      return { event: event.kind, dealer: event.deal.dealer };
    case 'sealed':
      return { event: event.kind, seat: event.seat, step: event.step, by: event.pass.by };
    case 'taken-back':
      return { event: event.kind, seat: event.seat, step: event.step };
    case 'voted':
    case 'asked':
      return { event: event.kind, seat: event.seat, by: event.by };
    case 'settled':
    case 'followed':
      return {
        event: event.kind,
        step: event.outcome.kind === 'move' ? event.outcome.step : event.outcome.kind,
      };
    case 'closed':
      return { event: 'round-closed' };
  }
}
