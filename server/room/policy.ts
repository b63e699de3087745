// What differs between the tables of people and the tables of a class, as one object that is handed to a room.
import type { Mode } from '../../shared-engine/index.ts';

export interface TablePolicy {
  /** Whether whoever has the code may look in, watch and sit down, and has a person's data at the room itself. */
  readonly isOpen: boolean;
  /** Who starts a deal: the class, everybody present by being ready, or, the first time, nobody has to. */
  readonly deals: 'by-class' | 'when-ready' | 'first-at-once';
  /** Whether people at the table leave it, and its host seats bots and removes people. */
  readonly hasHost: boolean;
  /** Whether a bot chooses for somebody who has been away long while others wait. */
  readonly replacesAbsent: boolean;
  /** Whether its people are told of a teacher's controls. */
  readonly hasTeacher: boolean;
  /** Whether reviews are shared with the other tables of a class, where many hold and do the same. */
  readonly sharesReviews: boolean;
}

export const FRIENDS_TABLE: TablePolicy = {
  isOpen: true,
  deals: 'when-ready',
  hasHost: true,
  replacesAbsent: true,
  hasTeacher: false,
  sharesReviews: false,
};

export const SOLO_TABLE: TablePolicy = { ...FRIENDS_TABLE, deals: 'first-at-once' };

export type Policies = Readonly<Record<Mode, TablePolicy>>;
