export * from './document/catalogue.ts';
export * from './document/job.ts';
export * from './document/primitives.ts';
export * from './plan/figure.ts';
export * from './plan/finding.ts';
export * from './plan/plan.ts';
