// How a table of a class differs from one that people open for themselves.
import type { TablePolicy } from '../room/policy.ts';

/**
 * It is there for its players alone: a spectator could put a name beside a choice. The class deals, seats and keeps
 * each player's seat for the whole drill; the records belong to its teacher's report and go with the class.
 */
export const CLASS_TABLE: TablePolicy = {
  isOpen: false,
  deals: 'by-class',
  hasHost: false,
  replacesAbsent: false,
  hasTeacher: true,
  sharesReviews: true,
};
