export { markTrials } from '../tests/trials/markTrials.ts';
export { pairTrials } from '../tests/trials/pairTrials.ts';
