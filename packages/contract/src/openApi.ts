import { catalogue, job } from '@panewright/design';
import { z } from 'zod';
import type { Operation } from './operations/operation.ts';
import { operations } from './operations/operations.ts';
import { figureSchema, outlineSchema, planSchema } from './planSchema.ts';
import { type DoorAnswer, doorAnswers, type RefusalCode } from './refusal.ts';

/** What a door answers instead of an output. */
const refused = z.strictObject({
  refusal: z.looseObject({ code: z.enum(Object.keys(doorAnswers) as [RefusalCode, ...RefusalCode[]]) }),
  say: z.strictObject({ what: z.string(), why: z.string(), do: z.string() }),
});

const STATUS_TEXT: Readonly<Record<DoorAnswer['status'], string>> = {
  400: 'the input cannot be used',
  403: 'asked from elsewhere',
  404: 'there is no such thing',
  409: 'something else was saved since',
  413: 'too long',
  415: 'not sent as JSON',
  422: 'not known to this program',
  503: 'busy: try again',
  507: 'the disk is full',
};

const PREFIX = '#/components/schemas/';
const ref = (id: string) => ({ content: { 'application/json': { schema: { $ref: `${PREFIX}${id}` } } } });

/** The HTTP door as an OpenAPI 3.1 document: one POST for each operation, from the schemas that check it. */
export function openApi(): object {
  const entries = Object.entries(operations as unknown as Readonly<Record<string, Operation>>);
  return {
    openapi: '3.1.0',
    info: {
      title: 'Panewright',
      version: '1',
      description:
        'From measured openings to a cut-ready set of window panels. Lengths in mm, forces in N, money in minor units. Sentences are in the language that Accept-Language asks for: en, de or es.',
    },
    paths: Object.fromEntries(
      entries.map(([name, operation]) => [`/api/${name}`, { post: pathOf(name, operation) }]),
    ),
    components: { schemas: componentsOf(entries) },
  };
}

function pathOf(name: string, operation: Operation): object {
  const statuses = [...new Set(Object.values(doorAnswers).map(({ status }) => status))];
  return {
    operationId: name,
    summary: operation.summary,
    requestBody: {
      required: true,
      content: {
        'application/json': { schema: { $ref: `${PREFIX}${name}Input` }, example: operation.example },
      },
    },
    responses: {
      200: { description: 'the output', ...ref(`${name}Output`) },
      ...Object.fromEntries(
        statuses.map((status) => [status, { description: STATUS_TEXT[status], ...ref('Refused') }]),
      ),
    },
  };
}

function componentsOf(entries: readonly (readonly [string, Operation])[]): object {
  const registry = z.registry<{ id: string }>();
  const add = (id: string, schema: z.ZodType) => {
    if (!registry.has(schema)) registry.add(schema, { id });
  };
  add('Job', job);
  add('Catalogue', catalogue);
  add('Plan', planSchema);
  add('Figure', figureSchema);
  add('Outline', outlineSchema);
  add('Refused', refused);
  const aliases: Record<string, object> = {};
  for (const [name, operation] of entries)
    for (const side of ['input', 'output'] as const) {
      const id = `${name}${side === 'input' ? 'Input' : 'Output'}`;
      const known = registry.get(operation[side])?.id;
      if (known) aliases[id] = { $ref: `${PREFIX}${known}` };
      else add(id, operation[side]);
    }
  const { schemas } = z.toJSONSchema(registry, { io: 'input', uri: (id) => `${PREFIX}${id}` });
  const plain = Object.entries(schemas).map(([id, { $schema: _schema, $id: _id, ...schema }]) => [
    id,
    schema,
  ]);
  return { ...Object.fromEntries(plain), ...aliases };
}
