export * from './magnet.ts';
export * from './pairForce.ts';
