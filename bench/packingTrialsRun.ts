export { exactTrials, smallTrials } from './packing/smallTrials.ts';
