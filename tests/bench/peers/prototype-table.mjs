// The prototype answers as the bare sockets do.
export { openTable } from './bare-table.mjs';
