/** From the text of a spec to a model, with every problem of the text at its place. Never throws, whatever the text. */

import type { Issue } from '../issue.ts';
import type { Sheet, Stock, TagModel, Tie } from './model.ts';
import { Problems } from './problems.ts';
import { readPieces } from './read-pieces.ts';
import { ShapeReader } from './read-shapes.ts';
import { checkAgainstSchema } from './schema-issues.ts';
import { SpecSource } from './source.ts';
import type { TagSpec } from './types.generated.ts';

/** Narrowest web to rely on where the spec does not say: as wide as the sheet is thick, 1.5 mm as a floor (common practice, no source). */
const leastWebMm = 1.5;

export interface ParsedSpec {
  readonly source: SpecSource;
  /** Absent when any issue is an error: a tag is made of the whole spec or not at all. */
  readonly model?: TagModel;
  readonly issues: readonly Issue[];
}

export function parseSpec(text: string): ParsedSpec {
  const source = new SpecSource(text);
  if (source.issues.some((issue) => issue.code !== 'yaml-syntax')) return { source, issues: source.issues };
  if (
    source.value === undefined ||
    source.value === null ||
    typeof source.value !== 'object' ||
    Array.isArray(source.value)
  ) {
    return { source, issues: source.issues.length > 0 ? source.issues : [notASpec(source)] };
  }
  const schema = checkAgainstSchema(source);
  const spec = schema.value as Partial<TagSpec>;
  const problems = new Problems(source, spec.units ?? 'mm');
  const stock = readStock(spec, problems);
  const tie = readTie(spec, problems);
  const sheet = readSheet(spec, problems);
  const reader = new ShapeReader(spec, problems);
  const shapes = reader.all();
  const pieces = readPieces(spec.pieces ?? {}, spec.hangers ?? {}, reader, problems, { stock, tie });
  const issues = [...source.issues, ...schema.issues, ...problems.issues];
  if (issues.length > 0) return { source, issues };
  return {
    source,
    issues,
    model: {
      title: spec.title ?? 'Untitled tag',
      units: problems.units,
      stock,
      ...(tie ? { tie } : {}),
      ...(sheet ? { sheet } : {}),
      shapes,
      pieces,
    },
  };
}

function notASpec(source: SpecSource): Issue {
  const message = 'This is not a tag spec yet. Begin with “tagwright: 1”, then shapes and pieces.';
  return { code: 'not-a-spec', severity: 'error', path: [], range: source.range([]), message };
}

function readStock(spec: Partial<TagSpec>, problems: Problems): Stock {
  const { material, ...lengths } = spec.stock ?? {};
  const thickness = problems.length(lengths.thickness, ['stock', 'thickness'], 'size');
  const minWeb = problems.length(lengths.min_web, ['stock', 'min_web'], 'size');
  return {
    ...(material === undefined ? {} : { material }),
    ...(thickness === undefined ? {} : { thickness }),
    kerf: problems.length(lengths.kerf, ['stock', 'kerf'], 'distance') ?? 0,
    minWeb: minWeb ?? Math.max(leastWebMm, thickness ?? 0),
  };
}

function readSheet({ sheet }: Partial<TagSpec>, problems: Problems): Sheet | undefined {
  if (!sheet) return undefined;
  // A size that does not fit the schema was taken out, and has been reported.
  const written: readonly (number | string)[] = (sheet as Partial<typeof sheet>).size ?? [];
  const side = (index: 0 | 1) => problems.length(written[index], ['sheet', 'size', index], 'size');
  const [width, height] = [side(0), side(1)];
  const margin = problems.length(sheet.margin, ['sheet', 'margin'], 'distance') ?? 0;
  if (width === undefined || height === undefined) return undefined;
  if (2 * margin >= Math.min(width, height)) {
    problems.error('bad-length', ['sheet', 'margin'], 'The margins leave nothing of the sheet.');
  }
  return { width, height, margin };
}

function readTie(spec: Partial<TagSpec>, problems: Problems): Tie | undefined {
  for (const kind of ['twine', 'ribbon'] as const) {
    const size = problems.length(spec.tie?.[kind], ['tie', kind], 'size');
    if (size !== undefined) return { kind, size };
  }
  return undefined;
}
