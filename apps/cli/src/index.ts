export { type Io, processIo } from './io.ts';
export { main } from './main.ts';
