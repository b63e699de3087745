// What the module offers to its host; addresses are bytes in its memory, racks are 36 counts of a byte each.
export { setCard } from './card';
export { histogram, setLines, toGo, toGoByLine, toGoMany } from './kernel';
export { reserve } from './memory';
