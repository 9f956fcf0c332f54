import type { FindingCode } from '@panewright/design';
import type { SheetInput } from '../options.ts';

/** A caution in the plan's own words, with this job's figures, where the plan has it; the general one else. */
export function cautionText(input: SheetInput, code: FindingCode, general: string): string {
  const finding = input.plan.findings.find((one) => one.code === code);
  return finding === undefined ? general : input.options.say(finding, input.options.language);
}
