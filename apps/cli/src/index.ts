export { type Io, processIo } from './io.ts';
export { main } from './main.ts';
export { type SearchThreads, searchHere } from './searchThreads.ts';
