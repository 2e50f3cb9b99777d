/**
 * Reads the text of a job into its model, with every problem at its place. A problem with one entry does not affect the
 * others.
 */

import { isGroup } from '../../core/values.ts';
import type { Issue, YamlPath } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { Problems } from '../../spec/read/problems.ts';
import { readWorkshop } from '../../spec/read/read-workshop.ts';
import { checkAgainstSchema } from '../../spec/schema/schema-issues.ts';
import { Scope } from '../../spec/read/scope.ts';
import { yamlSlip } from '../../spec/slips/yaml-slip.ts';
import type { SpecPlaces } from '../../spec/yaml/source.ts';
import { noUses } from '../../spec/files/used-files.ts';
import type { Uses } from '../../spec/files/used-files.ts';
import type { JobSpec, SheetSource as SheetSourceSpec } from '../job-types.generated.ts';
import validateJob from '../job-validate.generated.mjs';
import { readFixed } from './read-fixed.ts';
import { productKey, productsOf } from './products.ts';
import type { JobModel, Laying, SheetSource, TagEntry } from './model.ts';

/** Common practice, no source. */
const usualLaying: Laying = { margin: 0, gap: 2, turn: 'half' };

export interface ReadJob {
  /** Absent if the text is not a job at all. */
  readonly model?: JobModel;
  readonly issues: readonly Issue[];
}

export function readJob(source: SpecPlaces, uses: Uses = noUses): ReadJob {
  if (source.issues.length > 0) return { issues: yamlSlip(source, (changed) => readJob(changed, uses).issues.length) };
  if (!isGroup(source.value)) {
    const message = 'This is not a job yet. Start with “tagwright_job: 1”, then tags and sheets.';
    return { issues: [{ code: 'not-a-spec', severity: 'error', path: [], range: source.range([]), message }] };
  }
  const { value, issues } = checkAgainstSchema(source, validateJob, 'the job');
  const spec = (isGroup(value) ? value : {}) as Partial<JobSpec>;
  const problems = new Problems(source, spec.units ?? 'mm');
  const workshop = sharedBy(source, uses);
  const usual: Laying = { ...usualLaying, ...workshop.laying };
  const tags = readTags(spec, problems);
  const sheets = new Map<string, readonly SheetSource[]>();
  const files = new Map<string, string>();
  const [sheetsUnread, stocksMeant] = [new Set<string>(), new Set<string>()];
  for (const [stock, list] of Object.entries(spec.sheets ?? {})) {
    const path = ['sheets', stock];
    // What cannot be read may define it.
    const isBroken = uses.issues.length > 0 || workshop.issues.length > 0;
    const known = isBroken ? undefined : workshop.stock(stock, path, source);
    if (known) problems.issues.push(known);
    for (const name of known?.suggestions ?? []) stocksMeant.add(name);
    const read = [...(list as readonly (SheetSourceSpec | undefined)[])].flatMap((each, index) =>
      each === undefined ? [] : (readSource(each, [...path, index], usual, problems) ?? []),
    );
    if (read.length < list.length) sheetsUnread.add(stock);
    sheets.set(
      stock,
      read.filter((each) => isFirst(each, stock, files, problems)),
    );
  }
  return {
    model: {
      ...(spec.title === undefined ? {} : { title: spec.title }),
      units: spec.units ?? 'mm',
      tags,
      unread: unreadOf(spec, tags, [...issues, ...problems.issues]),
      keepTogether: spec.keep_together ?? false,
      effort: spec.effort ?? 1,
      sheets,
      sheetsUnread,
      stocksMeant,
      fixed: readFixed(spec, problems),
    },
    issues: [...issues, ...uses.issues, ...workshop.issues, ...problems.issues],
  };
}

function readTags({ tags = [] as never }: Partial<JobSpec>, problems: Problems): TagEntry[] {
  const read = [...(tags as readonly (JobSpec['tags'][number] | undefined)[])].flatMap((entry, index): TagEntry[] => {
    const path: YamlPath = ['tags', index];
    if (entry?.spec === undefined) return [];
    const { spec, quantity, orders, product } = entry;
    // An invalid value has been reported; it must not count as the default of one.
    if (quantity === undefined && problems.wrote([...path, 'quantity'])) return [];
    if (orders === undefined && problems.wrote([...path, 'orders'])) return [];
    if (product === undefined && problems.wrote([...path, 'product'])) return [];
    if (quantity !== undefined && orders !== undefined) {
      const message = 'The table of orders has the quantities: leave out one of “quantity” and “orders”.';
      problems.error('bad-value', [...path, 'quantity'], message);
      return [];
    }
    if (orders === undefined && product !== undefined) {
      const message = 'A “product” is looked up in a table: add “orders” with its name.';
      problems.error('missing-key', [...path, 'product'], message);
      return [];
    }
    const products = product === undefined ? undefined : readProducts(product, [...path, 'product'], problems);
    const ofTable = { ...(orders === undefined ? {} : { orders }), ...(products ? { products } : {}) };
    return [{ spec, quantity: quantity ?? 1, ...ofTable, path }];
  });
  return read.filter((entry, index) => isNew(entry, read.slice(0, index), problems));
}

function unreadOf(
  { tags: written = [] as never }: Partial<JobSpec>,
  read: readonly TagEntry[],
  issues: readonly Issue[],
): JobModel['unread'] {
  return [...(written as readonly (JobSpec['tags'][number] | undefined)[])].flatMap((entry, index) => {
    if (entry?.spec === undefined || read.some(({ path }) => path[1] === index)) return [];
    const issue = issues.find(({ path }) => path[0] === 'tags' && path[1] === index);
    return issue ? [{ spec: entry.spec, why: issue.message }] : [];
  });
}

/** As written in the text, where numbers may have zeros in front. */
function readProducts(
  product: NonNullable<JobSpec['tags'][number]['product']>,
  path: YamlPath,
  problems: Problems,
): string[] {
  const list = (Array.isArray(product) ? product : [product]) as readonly (string | number | undefined)[];
  return [...list].flatMap((each, index) => {
    const at = Array.isArray(product) ? [...path, index] : path;
    if (typeof each === 'number') return [problems.source.written?.(at) ?? String(each)];
    return each === undefined ? [] : [each];
  });
}

/** Orders that a spec takes from one table twice would be made twice. */
function isNew(entry: TagEntry, before: readonly TagEntry[], problems: Problems): boolean {
  if (entry.orders === undefined) return true;
  const own = new Set(productsOf(entry).map(productKey));
  const same = before.find(
    (other) =>
      other.spec === entry.spec &&
      other.orders === entry.orders &&
      productsOf(other).some((product) => own.has(productKey(product))),
  );
  if (!same) return true;
  const message = `${clip(entry.spec)} takes these orders from “${clip(entry.orders)}” already: they would be made twice.`;
  problems.error('bad-value', [...entry.path, entry.products ? 'product' : 'orders'], message);
  return false;
}

function readSource(
  { size, count, offcuts, margin, gap, turn }: SheetSourceSpec,
  path: YamlPath,
  usual: Laying,
  problems: Problems,
): SheetSource | undefined {
  const laying: Laying = {
    margin: problems.length(margin, [...path, 'margin'], 'distance') ?? usual.margin,
    gap: problems.length(gap, [...path, 'gap'], 'distance') ?? usual.gap,
    turn: turn ?? usual.turn,
  };
  const wrote = (key: string) => problems.wrote([...path, key]);
  if (wrote('size') === wrote('offcuts')) {
    const message = wrote('size')
      ? 'An entry has a “size” or “offcuts”, not both.'
      : 'An entry needs the “size” of a sheet, or “offcuts” with the name of a file.';
    problems.error(wrote('size') ? 'bad-value' : 'missing-key', path, message);
    return undefined;
  }
  if (offcuts !== undefined) {
    if (wrote('count'))
      problems.error('bad-value', [...path, 'count'], 'The file of offcuts says itself how many there are.');
    return { kind: 'offcuts', file: offcuts, ...laying, path };
  }
  const written: readonly (number | string | undefined)[] = size ?? [];
  const side = (index: 0 | 1) => problems.length(written[index], [...path, 'size', index], 'size');
  const [width, height] = [side(0), side(1)];
  if (width === undefined || height === undefined || (count === undefined && wrote('count'))) return undefined;
  if (2 * laying.margin >= Math.min(width, height)) {
    problems.error(
      'bad-length',
      [...path, wrote('margin') ? 'margin' : 'size'],
      'The margins leave nothing of the sheet.',
    );
    return undefined;
  }
  return { kind: 'sheets', width, height, count: count ?? Infinity, ...laying, path };
}

/** A file that is named twice would be used up twice. */
function isFirst(source: SheetSource, stock: string, files: Map<string, string>, problems: Problems): boolean {
  if (source.kind === 'sheets') return true;
  const before = files.get(source.file);
  files.set(source.file, stock);
  if (before === undefined) return true;
  const message = `“${clip(source.file)}” is listed already, under “${before}”: an offcut is used once.`;
  problems.error('bad-value', [...source.path, 'offcuts'], message);
  return false;
}

interface Shared {
  readonly laying: Partial<Laying>;
  readonly issues: readonly Issue[];
  /** An issue if the workshop files do not define the stock. */
  stock(name: string, path: YamlPath, source: SpecPlaces): Issue | undefined;
}

/** Sheet settings and stocks from the workshop files. */
function sharedBy(source: SpecPlaces, { used }: Uses): Shared {
  if (used.length === 0) return { laying: {}, issues: [], stock: () => undefined };
  const asked = (source.value as JobSpec).use;
  // Read as by a spec that uses them and has nothing of its own.
  const asSpec: SpecPlaces = {
    value: { tagwright: 1, use: asked, pieces: {} },
    issues: [],
    range: (path) => source.range(path),
    keyRange: (path) => source.keyRange(path),
    position: (offset) => source.position(offset),
  };
  const scope = new Scope(asSpec, used);
  scope.checkClashes();
  const { sheet } = readWorkshop(scope);
  const isOfUse = ({ path }: Issue) => path[0] === 'use';
  const issues = scope.issues(asSpec).filter(isOfUse);
  return {
    laying: sheet ? { margin: sheet.margin, gap: sheet.gap, turn: sheet.turn } : {},
    issues,
    stock: (name, path, places) => {
      const before = scope.problems.issues.length;
      scope.require('stocks', name, path, { range: places.keyRange(path) });
      return scope.problems.issues[before];
    },
  };
}
