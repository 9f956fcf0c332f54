import { catalogue, job } from '@panewright/design';
import { z } from 'zod';
import { planSchema } from './planSchema.ts';

/** JSON Schema (draft 2020-12) of each document, by name. */
export function documentSchemas(): Record<'job' | 'catalogue' | 'plan', object> {
  const schema = (type: z.ZodType, title: string) => ({ title, ...z.toJSONSchema(type, { io: 'input' }) });
  return {
    job: schema(job, 'Panewright job'),
    catalogue: schema(catalogue, 'Panewright catalogue'),
    plan: schema(planSchema, 'Panewright plan'),
  };
}
