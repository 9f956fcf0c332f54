export { pocketTrials } from '../packages/design/src/testing/cornerPockets.ts';
export { INTERVAL_PAIRS, shareWithin } from '../packages/magnets/src/testing/pullIntervals.ts';
