// Holds every database and statement of SQLite for good, closed ones too, so that none of them is ever collected.
//
// The headers of Node 24.19 and 26.4 changed how an addon's objects end: one that is collected while no JavaScript runs,
// as happens in a server with nothing to do, ends the whole process (issue 65446 of nodejs/node). Version 13 of
// better-sqlite3 no longer has such objects but needs Node 22. What is held is little: some twenty closed statements
// for each file that this process has opened, and a server opens one.

const held = new Set<object>();

export function hold<T extends object>(one: T): T {
  held.add(one);
  return one;
}
