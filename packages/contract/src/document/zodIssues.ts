import type { LengthRefusal } from '@panewright/quantity';
import type { z } from 'zod';
import { type Issue, type IssuePath, jsonKind, valueAt } from './issue.ts';

/** More than this are not told at once: mending the first ones mends most of the rest. */
const MOST_ISSUES = 20;

/** What a schema found wrong, as issues the doors have words for. `value` is what was given. */
export function issuesOf(error: z.ZodError, value: unknown): readonly Issue[] {
  return error.issues
    .flatMap((issue) => toIssues(issue, issue.path as IssuePath, value))
    .slice(0, MOST_ISSUES);
}

function toIssues(
  issue: z.core.$ZodIssue,
  path: IssuePath,
  root: unknown,
  found = valueAt(root, path),
): readonly Issue[] {
  switch (issue.code) {
    case 'invalid_type':
      return [typeIssue(issue, path, found)];
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({ kind: 'unknownKey', path, key: key.slice(0, 60) }));
    // An object with a `length` of its own is measured like a text; that it is an object is said already.
    case 'too_small':
      return sizeIsOf(issue.origin, found) ? [tooSmall(issue, path, found)] : [];
    case 'too_big':
      return sizeIsOf(issue.origin, found) ? [tooBig(issue, path, found)] : [];
    case 'invalid_value':
      return [
        found === undefined
          ? { kind: 'missing', path }
          : { kind: 'notOneOf', path, options: issue.values.map(String) },
      ];
    case 'invalid_union':
      return unionIssues(issue, path, found);
    case 'invalid_format':
      return [
        {
          kind: 'pattern',
          path,
          pattern: issue.format === 'regex' ? (issue.pattern ?? 'regex') : issue.format,
        },
      ];
    case 'invalid_key':
      return issue.issues.flatMap((inner) => toIssues(inner, path, root, path.at(-1)));
    case 'invalid_element':
      return issue.issues.flatMap((inner) => toIssues(inner, path, root));
    case 'not_multiple_of':
      return [{ kind: 'notWhole', path }];
    case 'custom':
      return [customIssue(issue, path)];
  }
}

function typeIssue(issue: z.core.$ZodIssueInvalidType, path: IssuePath, found: unknown): Issue {
  if (found === undefined) return { kind: 'missing', path };
  if (typeof found === 'number' && !Number.isFinite(found)) return { kind: 'notFinite', path };
  if (typeof found === 'number' && (issue.expected === 'int' || issue.expected === 'number'))
    return { kind: 'notWhole', path };
  return {
    kind: 'type',
    path,
    wanted: issue.expected === 'int' ? 'number' : issue.expected,
    found: jsonKind(found),
  };
}

function sizeIsOf(origin: string, found: unknown): boolean {
  if (origin === 'array') return Array.isArray(found);
  return origin === 'string' ? typeof found === 'string' : typeof found === 'number';
}

function tooSmall(issue: z.core.$ZodIssueTooSmall, path: IssuePath, found: unknown): Issue {
  const least = Number(issue.minimum);
  if (issue.origin === 'string') return { kind: 'textTooShort', path, least };
  if (issue.origin === 'array') return { kind: 'listTooShort', path, least };
  return { kind: 'tooLow', path, least, including: issue.inclusive ?? true, found: Number(found) };
}

function tooBig(issue: z.core.$ZodIssueTooBig, path: IssuePath, found: unknown): Issue {
  const most = Number(issue.maximum);
  if (issue.origin === 'string') return { kind: 'textTooLong', path, most };
  if (issue.origin === 'array') return { kind: 'listTooLong', path, most };
  return { kind: 'tooHigh', path, most, including: issue.inclusive ?? true, found: Number(found) };
}

function unionIssues(issue: z.core.$ZodIssueInvalidUnion, path: IssuePath, found: unknown): readonly Issue[] {
  if (found === undefined) return [{ kind: 'missing', path }];
  const options = 'options' in issue && Array.isArray(issue.options) ? issue.options.map(String) : [];
  return [{ kind: 'notOneOf', path, options }];
}

function customIssue(issue: z.core.$ZodIssueCustom, path: IssuePath): Issue {
  const refusal = issue.params?.refusal as LengthRefusal | undefined;
  return refusal ? { kind: 'length', path, refusal } : { kind: 'rule', path, rule: issue.message };
}
