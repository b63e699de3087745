// The policy of a class's tables: how they differ from tables that people open for themselves.
import type { TablePolicy } from '../room/policy.ts';

/**
 * A table is for its players alone, because a spectator could connect a name with a choice. The class deals, and keeps
 * each player's seat for the whole drill. The records belong to the teacher's report and are deleted with the class.
 */
export const CLASS_TABLE: TablePolicy = {
  isOpen: false,
  deals: 'by-class',
  hasHost: false,
  replacesAbsent: false,
  hasTeacher: true,
  sharesReviews: true,
};
