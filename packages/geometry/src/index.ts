export * from './area.ts';
export * from './bounds.ts';
export * from './contains.ts';
export { type Arc, arcOf, type Edge, edges, normalisedStart, reversed, startingAt } from './edges.ts';
export { type FlattenSide, flatten } from './flatten.ts';
export * from './outline.ts';
export { point, type Vector } from './point.ts';
export * from './roundedPolygon.ts';
export * from './transform.ts';
