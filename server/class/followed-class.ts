// What the parts of a class need of it: its state, its tables, and whether its choices are analyzed.
import type { PlayingCard } from '../ports.ts';
import type { ClassState } from './state.ts';
import type { Tables } from './tables.ts';

export interface FollowedClass {
  readonly code: string;
  readonly card: PlayingCard;
  readonly state: ClassState;
  readonly tables: Pick<Tables, 'at'>;
  readonly analyses: {
    /** Whether deep analyses are made at this server. */
    readonly areMade: boolean;
  };
}
