// How long a log may become, so that nobody can fill a disk or slow a server down with one room or class.

/** Events behind the newest snapshot from which on the next row brings another one: as many are read to load a log. */
export const MAX_BEHIND_SNAPSHOT = 256;

/** Events of a room or a class. An evening of thirty rounds has about 3,000; a room with so many is read in 0.2 s. */
export const MAX_EVENTS = 10_000;
