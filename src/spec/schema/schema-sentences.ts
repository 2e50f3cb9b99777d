/** Sentences for what the schema does not allow. */

import { capitalised } from '../../core/names.ts';
import type { Issue, YamlPath } from '../../core/issue.ts';
import type { SpecPlaces } from '../yaml/source.ts';
import { clip } from '../../core/length.ts';
import { didYouMean, nearestWords } from './suggest.ts';

/** Longest list of keys worth reading in a message. */
const mostNamed = 14;

/** The first line that a file of each language needs. */
const firstLines: Readonly<Record<string, string>> = {
  tagwright: 'A tag spec starts with the line “tagwright: 1”.',
  tagwright_job: 'A job starts with the line “tagwright_job: 1”.',
  tagwright_offcuts: 'A file of offcuts starts with the line “tagwright_offcuts: 1”.',
};

/** One error of the validator, in ajv's terms. */
export interface SchemaError {
  readonly keyword: string;
  readonly instancePath: string;
  readonly params: Record<string, unknown>;
  /** The schema that holds the keyword. */
  readonly parentSchema?: {
    readonly properties?: object;
    readonly description?: string;
    readonly anyOf?: readonly object[];
    readonly title?: string;
  };
}

export function toIssue(
  error: SchemaError,
  path: YamlPath,
  source: SpecPlaces,
  { found, name, beside = {} }: { readonly found: unknown; readonly name: string; readonly beside?: object },
): Issue {
  const base = { severity: 'error', path, range: source.range(path) } as const;
  const params = error.params;
  switch (error.keyword) {
    case 'additionalProperties': {
      const key = String(params['additionalProperty']);
      const known = Object.keys(error.parentSchema?.properties ?? {});
      const nearest = nearestWords(key, known);
      const suggestions = nearest.filter((each) => !Object.hasOwn(beside, each));
      const hint =
        didYouMean(suggestions) ||
        (nearest.length > 0 ? ` “${nearest[0]!}” is there already.` : '') ||
        coloured(key, path) ||
        (known.length <= mostNamed ? ` Allowed here: ${known.join(', ')}.` : '');
      return {
        ...base,
        code: 'unknown-key',
        message: `Unknown key “${clip(key)}”.${hint}`,
        range: source.keyRange(path),
        suggestions,
      };
    }
    case 'required': {
      const key = String(params['missingProperty']);
      const firstLine = Object.hasOwn(firstLines, key) ? firstLines[key] : undefined;
      return {
        ...base,
        code: firstLine === undefined ? 'missing-key' : 'not-a-spec',
        message: firstLine ?? `${capitalised(name)} needs “${key}”.`,
        range: source.keyRange(path),
      };
    }
    case 'propertyNames':
      return {
        ...base,
        code: 'bad-value',
        range: source.keyRange(path),
        message: `${capitalised(name)} cannot be a name: start with a letter, then use letters, digits, - and _.`,
      };
    case 'enum': {
      const allowed = (params['allowedValues'] as unknown[]).map(String);
      const suggestions = typeof found === 'string' ? nearestWords(found, allowed) : [];
      return {
        ...base,
        code: 'bad-value',
        message: `${capitalised(name)} is one of ${allowed.join(', ')}.${didYouMean(suggestions)}`,
        suggestions,
      };
    }
    default:
      if (found === null)
        return {
          ...base,
          code: 'bad-value',
          range: source.keyRange(path),
          message: `${capitalised(name)} has no value yet.`,
        };
      return { ...base, code: 'bad-value', ...described(error, capitalised(name), found) };
  }
}

export function naming(path: YamlPath, whole: string): string {
  const last = path.at(-1);
  if (last === undefined) return whole;
  const list = path.findLast((step) => typeof step === 'string');
  return typeof last === 'number' ? `entry ${last + 1} of “${clip(String(list))}”` : `“${clip(last)}”`;
}

/** Shapes have no colour. */
function coloured(key: string, path: YamlPath): string {
  const isOfShape = /^colou?rs?$/.test(key) && (path[0] === 'shapes' || path[0] === 'pieces');
  return isOfShape ? ' A tag has the colour of its stock: “look” in “stock”.' : '';
}

function described(error: SchemaError, name: string, found: unknown): Pick<Issue, 'message' | 'suggestions'> {
  if (error.keyword === 'maxProperties') return { message: `${name} ${oneKey(found)}` };
  const quoted = error.keyword === 'type' && error.params['type'] === 'string' ? placeholderOf(found) : undefined;
  if (quoted === undefined) {
    const suggestions = typeof found === 'string' && !found.includes(' ') ? nearestWords(found, wordsOf(error)) : [];
    const message =
      suggestions.length > 0 ? `has a value that does not fit.${didYouMean(suggestions)}` : expectation(error);
    return { message: `${name} ${message}`, suggestions };
  }
  return { message: `${name} needs quotes, because YAML reads braces as a group: ${quoted}.`, suggestions: [quoted] };
}

/** Of a group of which each may be an entry of a list, such as hangers. */
function oneKey(found: unknown): string {
  const entries = typeof found === 'object' && found !== null ? Object.entries(found) : [];
  // What is long itself can be seen in the line above.
  const list = entries.map(
    ([key, value]) => `{${clip(key)}: ${typeof value === 'object' ? '…' : clip(String(value))}}`,
  );
  return `takes only one of its keys; for ${list.length === 2 ? 'both' : 'all of them'} write a list: [${list.join(', ')}].`;
}

/** The words that may stand where something else may as well. */
function wordsOf({ parentSchema }: SchemaError): string[] {
  return (parentSchema?.anyOf ?? []).flatMap((each) => ('enum' in each ? (each.enum as unknown[]).map(String) : []));
}

/** `{name}` without quotes, which YAML reads as a group with one key that has no value. */
function placeholderOf(found: unknown): string | undefined {
  if (typeof found !== 'object' || found === null) return undefined;
  const [entry, ...more] = Object.entries(found);
  return entry?.[1] === null && more.length === 0 ? `"{${entry[0]}}"` : undefined;
}

const comparisons = { '>=': 'at least', '<=': 'at most', '>': 'more than', '<': 'less than' } as const;

function expectation({ keyword, params, parentSchema }: SchemaError): string {
  const limit = String(params['limit']);
  switch (keyword) {
    case 'const':
      return `must be ${String(params['allowedValue'])}.`;
    case 'type':
      return `should be ${kinds(params['type'])}${sizeExample(parentSchema)}${keysOf(params['type'], parentSchema?.properties)}.`;
    case 'pattern':
      return patterned(String(params['pattern']));
    case 'maxLength':
      return `may have at most ${limit} characters.`;
    case 'minItems':
      return `needs at least ${Number(limit) === 1 ? 'one entry' : `${limit} entries`}.`;
    case 'maxItems':
      return `may have at most ${limit} entries.`;
    case 'minProperties':
      return 'needs at least one entry.';
    case 'minimum':
    case 'maximum':
    case 'exclusiveMinimum':
    case 'exclusiveMaximum':
      return `must be ${comparisons[params['comparison'] as keyof typeof comparisons]} ${limit}.`;
    default:
      return parentSchema?.description === undefined
        ? 'has a value that does not fit here.'
        : `has a value that does not fit. What goes here: ${firstSentence(parentSchema.description)}`;
  }
}

function patterned(pattern: string): string {
  if (pattern.startsWith('^#')) return 'should be a colour such as "#0072B2", in quotes.';
  if (pattern.startsWith('^\\d{4}-')) return 'should be a day such as 2026-03-14.';
  return 'has a character that is not allowed here.';
}

function firstSentence(description: string): string {
  const plain = description.replace(/^Generator: /, '').replaceAll('`', '');
  return /^.*?\.(?= |$)/s.exec(plain)?.[0] ?? plain;
}

/** The keys of a group, if they are few enough to read. */
function keysOf(type: unknown, properties: object | undefined): string {
  const keys = Object.keys(properties ?? {});
  if (type !== 'object' || keys.length === 0) return '';
  return keys.length <= mostNamed ? `: ${keys.join(', ')}` : ', such as {ellipse: 30 mm}';
}

function sizeExample(parent: SchemaError['parentSchema']): string {
  return parent?.title === 'Size' ? ' of two, width and height: [60 mm, 30 mm]' : '';
}

function kinds(type: unknown): string {
  const names: Record<string, string> = {
    object: 'a group of keys',
    array: 'a list',
    string: 'text',
    number: 'a number',
    integer: 'a whole number',
    boolean: 'true or false',
  };
  return (Array.isArray(type) ? type : [type]).map((kind) => names[String(kind)] ?? String(kind)).join(' or ');
}
