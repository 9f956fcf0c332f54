import type { Finding, FindingCode } from '@panewright/design';
import { inOne, sayRefusal } from './answers/answers.ts';
import { english } from './answers/english/english.ts';
import { refusalSamples } from './answers/samples.ts';
import { sayFinding } from './answers/sayFinding.ts';
import { makeShow, type Show } from './answers/show.ts';
import { openApi } from './openApi.ts';
import { doorAnswers, type RefusalCode } from './refusal.ts';
import { documentSchemas } from './schemas.ts';

const json = (value: unknown) => `${JSON.stringify(value, null, 1)}\n`;

/** The pages and files made from the contract, by their path in the repository. */
export function madePages(): Readonly<Record<string, string>> {
  const schemas = Object.entries(documentSchemas()).map(([name, schema]) => [
    `docs/schema/${name}.json`,
    json(schema),
  ]);
  return {
    'docs/openapi.json': json(openApi()),
    'docs/refusals.md': refusalsPage(),
    ...Object.fromEntries(schemas),
  };
}

/** A number or a name stands as ‹its key›. */
const placeholders = new Proxy({}, { get: (_, key) => `‹${String(key)}›` });
const asIs = (value: unknown) => String(value ?? '');
const placeholderShow: Show = {
  length: asIs,
  fine: asIs,
  number: asIs,
  force: asIs,
  speed: asIs,
  percent: asIs,
  money: asIs,
  text: asIs,
  opening: asIs,
  openings: asIs,
};

function refusalsPage(): string {
  const refusals = (Object.keys(doorAnswers) as RefusalCode[]).map((code) => {
    const { status, exit } = doorAnswers[code];
    return `| \`${code}\` | ${status} | ${exit} | ${cell(inOne(sayRefusal(refusalSamples[code], makeShow({ units: 'in' }))))} |`;
  });
  const findings = (Object.keys(english.findings) as FindingCode[]).map((code) => {
    const finding = { severity: 'note', code, where: placeholders, numbers: placeholders } as Finding;
    const { what, why, do: doThis } = sayFinding(finding, placeholderShow);
    return `| \`${code}\` | ${cell(what)} | ${cell(why)} | ${cell(doThis)} |`;
  });
  return `# What the program answers when it cannot, or would rather not

Made from the table of answers by \`npm run docs\`.

## Refusals

An answer instead of an output: the code with its numbers, and a sentence. Each with an example of its words.

| code | HTTP | exit | example |
|---|---|---|---|
${refusals.join('\n')}

## Findings

What a plan says about the design. Numbers stand in ‹ ›.

| code | what | why | what would do |
|---|---|---|---|
${findings.join('\n')}
`;
}

const cell = (text: string) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
