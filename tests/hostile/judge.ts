import {
  doorAnswers,
  inOne,
  NOT_GIVEN,
  type Plan,
  planSchema,
  type RefusalCode,
  readJob,
  sayFinding,
  showOf,
} from '@panewright/contract';

export type Verdict = 'refused' | 'planned';

/**
 * What an answer to a hostile document has to be: a refusal with a known code and a sentence, or a plan in which every
 * number is finite and that was made from exactly what was given. Throws what is wrong otherwise.
 */
export function judge(status: number, body: unknown, given: unknown): Verdict {
  if (typeof body !== 'object' || body === null) throw new Error(`the answer is ${JSON.stringify(body)}`);
  if ('refusal' in body) {
    const { refusal, say } = body as { refusal: { code: RefusalCode }; say: { what: string; do: string } };
    if (doorAnswers[refusal.code]?.status !== status) throw new Error(`${refusal.code} came with ${status}`);
    judgeSentence(say.what, given);
    return 'refused';
  }
  if (status !== 200) throw new Error(`${status}: ${JSON.stringify(body).slice(0, 300)}`);
  const plan = planSchema.safeParse(body);
  if (!plan.success) throw new Error(`not a plan: ${JSON.stringify(plan.error.issues.slice(0, 3))}`);
  const read = readJob(given);
  if (!read.ok) throw new Error('a document that is refused alone was planned');
  if (!same(read.value, given)) throw new Error('the document was changed on the way in');
  return 'planned';
}

/** Equal as JSON: same keys, same values, whatever the order of keys. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && same(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
}

/** A sentence has a beginning and an end, and nothing of the inside of the program but what was given. */
export function judgeSentence(sentence: string, given: unknown): void {
  const leaked = sentence.match(/undefined|NaN|Infinity|\[object/)?.[0];
  const inside = leaked !== undefined && !JSON.stringify(given).includes(leaked);
  if (!/^\S.*\.$/s.test(sentence) || sentence.includes(NOT_GIVEN) || inside)
    throw new Error(`not a sentence: ${sentence}`);
}

/** Every finding has its words, with all their numbers; gives the codes. */
export function wordFindings(plan: Plan, document: unknown): readonly string[] {
  const job = readJob(document);
  if (!job.ok) throw new Error('planned, but not a job');
  return plan.findings.map((finding) => {
    const text = inOne(sayFinding(finding, showOf(job.value)));
    judgeSentence(text, document);
    return finding.code;
  });
}
