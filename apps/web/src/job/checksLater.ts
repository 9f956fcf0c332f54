import type { Catalogue, Job } from '../contract.ts';
import type { Check } from './documentStore.ts';
import { whenDrawn } from './whenDrawn.ts';

const checks = () => import('./checks.ts');

const drawn = (): Promise<void> => new Promise((then) => whenDrawn(then));

/** The checks of both documents, fetched after the first drawing. What is edited before is checked when they come. */
export const jobCheckLater = async (): Promise<Check<Job>> => {
  await drawn();
  return (await checks()).checkJob;
};

export const catalogueCheckLater = async (): Promise<Check<Catalogue>> => {
  await drawn();
  return (await checks()).checkCatalogue;
};

/** Reads what another version of this program may have kept in the browser. */
export const readJobLater = async (value: unknown) => (await checks()).readJob(value);

export const readCatalogueLater = async (value: unknown) => (await checks()).readCatalogue(value);
