/**
 * Turns what the schema finds wrong into sentences with a place, and returns the spec without those parts, so that the
 * rest can be read.
 */

import { valueAt } from '../../core/values.ts';
import validateSpec from '../validate.generated.mjs';
import type { Issue, YamlPath } from '../../core/issue.ts';
import type { SpecPlaces } from '../yaml/source.ts';
import { isMeantAs } from './suggest.ts';
import { toIssue, naming } from './schema-sentences.ts';
import type { SchemaError } from './schema-sentences.ts';

/** The compiled schema of a language. */
export type Validate = typeof validateSpec;

/**
 * Everything about `source.value` that the schema does not allow, and a copy of the value without it. The copy conforms
 * to the generated types, except that required keys may be missing where an issue says so.
 */
export function checkAgainstSchema(
  source: SpecPlaces,
  validate: Validate = validateSpec,
  whole = 'the spec',
): { issues: Issue[]; value: unknown } {
  const value = structuredClone(source.value);
  const complaintsOf = (root: unknown) => complaints(validate, root);
  let errors = complaintsOf(value);
  // `text: 2024` is a number to YAML, but is read here as the text it is written as.
  if (readAsText(value, errors, source)) errors = complaintsOf(value);
  const issues: Issue[] = [];
  const seen = new Set<string>();
  for (const error of errors) {
    if (isMisspelt(error, errors)) continue;
    const path = pathOf(error);
    const place = `${error.keyword === 'required' ? String(error.params['missingProperty']) : ''}@${path.join('/')}`;
    if (seen.has(place)) continue;
    seen.add(place);
    const beside = valueAt(source.value, toPath(error.instancePath));
    issues.push(
      toIssue(error, path, source, {
        found: valueAt(source.value, path),
        name: naming(path, whole),
        ...(typeof beside === 'object' && beside ? { beside } : {}),
      }),
    );
  }
  // A group whose faulty key was removed may lack what it needs, and is then removed too.
  for (let faulty = errors; removeAll(value, faulty.map(pathOf));) faulty = complaintsOf(value);
  return { issues, value };
}

/** Whether what is missing is there under a name with a slip in it, which is told. */
function isMisspelt({ keyword, instancePath, params }: SchemaError, errors: readonly SchemaError[]): boolean {
  return (
    keyword === 'required' &&
    errors.some(
      (other) =>
        other.keyword === 'additionalProperties' &&
        other.instancePath === instancePath &&
        isMeantAs(String(other.params['additionalProperty']), String(params['missingProperty'])),
    )
  );
}

/** Replaces numbers, and words such as `true`, by their written text where a text belongs. Returns whether it did. */
function readAsText(root: unknown, errors: readonly SchemaError[], source: SpecPlaces): boolean {
  let changed = false;
  for (const error of errors) {
    if (error.keyword !== 'type' || error.params['type'] !== 'string') continue;
    const path = pathOf(error);
    const found = valueAt(root, path);
    if (typeof found !== 'number' && typeof found !== 'boolean') continue;
    const parent = valueAt(root, path.slice(0, -1)) as Record<string | number, unknown>;
    parent[path.at(-1)!] = source.written?.(path) ?? String(found);
    changed = true;
  }
  return changed;
}

function complaints(validate: Validate, value: unknown): SchemaError[] {
  return validate(value) ? [] : relevant((validate.errors ?? []) as SchemaError[], value);
}

/**
 * Removes the values at the paths, and returns whether there were any. Deepest first, so that a removal does not move
 * what is still to be removed.
 */
function removeAll(root: unknown, paths: YamlPath[]): boolean {
  const removed = paths
    .sort(deepestLast)
    .reverse()
    .map((path) => remove(root, path));
  return removed.includes(true);
}

/** Keeps the errors of the alternative that was meant, where several are allowed and the validator reports on each. */
function relevant(errors: readonly SchemaError[], value: unknown): SchemaError[] {
  const choices = errors.filter((error) => error.keyword === 'anyOf');
  const choicePaths = new Set(choices.map((error) => error.instancePath));
  const kept = errors.filter((error) => {
    if (error.keyword === 'anyOf' || error.keyword === 'propertyNames') return error.keyword === 'propertyNames';
    if (error.params['propertyName'] !== undefined) return false;
    if (!choicePaths.has(error.instancePath)) return true;
    const found = valueAt(value, toPath(error.instancePath));
    const mismatch = error.keyword === 'type' || error.keyword === 'enum';
    return typeof found === 'object' && found !== null && !mismatch;
  });
  // An inner error makes the whole invalid too: it is reported at its own place, if anything can be said of it there.
  const isInner = (path: string, outer: string) => path.startsWith(`${outer}/`);
  const described = choices.filter(({ parentSchema }) => parentSchema?.description !== undefined);
  const speaking = described.length > 0 ? described : choices;
  const unanswered = speaking.filter(
    ({ instancePath }) =>
      !kept.some((error) => error.instancePath === instancePath || isInner(error.instancePath, instancePath)) &&
      !speaking.some((other) => isInner(other.instancePath, instancePath)),
  );
  return [...kept, ...unanswered];
}

function pathOf(error: SchemaError): YamlPath {
  const base = toPath(error.instancePath);
  if (error.keyword === 'additionalProperties') return [...base, String(error.params['additionalProperty'])];
  if (error.keyword === 'propertyNames') return [...base, String(error.params['propertyName'])];
  return base;
}

function toPath(pointer: string): YamlPath {
  return pointer === ''
    ? []
    : pointer
        .slice(1)
        .split('/')
        .map(decode)
        .map((step) => (/^\d+$/.test(step) ? Number(step) : step));
}

function decode(step: string): string {
  return step.replaceAll('~1', '/').replaceAll('~0', '~');
}

function deepestLast(a: YamlPath, b: YamlPath): number {
  if (a.length !== b.length) return a.length - b.length;
  const [lastA, lastB] = [a.at(-1), b.at(-1)];
  return typeof lastA === 'number' && typeof lastB === 'number' ? lastA - lastB : 0;
}

/** Removes a key; a list entry leaves a hole, so that the paths of its neighbours stay valid. */
function remove(root: unknown, path: YamlPath): boolean {
  const parent = valueAt(root, path.slice(0, -1));
  const last = path.at(-1);
  if (last === undefined || typeof parent !== 'object' || parent === null || !Object.hasOwn(parent, last)) return false;
  // oxlint-disable-next-line typescript/no-dynamic-delete
  delete (parent as Record<string | number, unknown>)[last];
  return true;
}
