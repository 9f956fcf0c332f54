export * from './outline.ts';
