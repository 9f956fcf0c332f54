import { type Job, job } from '@panewright/design';
import document from '../../../demo/camper.job.json';

/** The invented camper, as it is in demo/camper.job.json. */
export const demoJob: Job = job.parse(document);
