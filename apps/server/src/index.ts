export { type Answer, answerText, type Compute, inProcess } from './compute/compute.ts';
export { fonts } from './compute/fonts.ts';
export { makeServer, type ServerOptions } from './http/makeServer.ts';
export { putDemoIn } from './openDemo.ts';
export { type SqliteStore, sqliteStore } from './store/sqliteStore.ts';
