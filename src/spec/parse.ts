/** From the text of a spec to a model, with every problem of the text at its place. Never throws, whatever the text. */

import type { Issue } from '../issue.ts';
import type { TagModel } from './model.ts';
import { readPieces } from './read-pieces.ts';
import { readWorkshop } from './read-workshop.ts';
import { Scope } from './scope.ts';
import { SpecSource } from './source.ts';
import type { SpecPlaces } from './source.ts';
import { noUses } from './used-files.ts';
import type { Uses } from './used-files.ts';

export interface ParsedSpec {
  readonly source: SpecSource;
  /** Absent when any issue is an error: a tag is made of the whole spec or not at all. */
  readonly model?: TagModel;
  readonly issues: readonly Issue[];
}

/** `uses`: the files that the spec uses, loaded. */
export function parseSpec(spec: string | SpecSource, uses: Uses = noUses): ParsedSpec {
  const source = typeof spec === 'string' ? new SpecSource(spec) : spec;
  if (source.issues.some((issue) => issue.code !== 'yaml-syntax')) return { source, issues: source.issues };
  if (source.issues.length > 0 && !isGroup(source.value)) return { source, issues: source.issues };
  return { source, ...readSpec(source, uses) };
}

/** What a spec says whose value has been taken out of its YAML, or is only thought of. */
export function readSpec(source: SpecPlaces, uses: Uses): Omit<ParsedSpec, 'source'> {
  if (!isGroup(source.value)) return { issues: [notASpec(source)] };
  const scope = new Scope(source, uses.used);
  scope.checkClashes();
  const workshop = readWorkshop(scope);
  const shapes = scope.shapes.all();
  const pieces = readPieces(scope, workshop);
  const issues = [...uses.issues, ...scope.issues(source)];
  if (issues.length > 0) return { issues };
  const { stock, tie, sheet, machine, output } = workshop;
  return {
    issues,
    model: {
      title: scope.spec.title ?? 'Untitled tag',
      units: scope.problems.units,
      stock,
      ...(tie ? { tie } : {}),
      ...(sheet ? { sheet } : {}),
      ...(machine ? { machine } : {}),
      output,
      shapes,
      pieces,
    },
  };
}

function isGroup(value: unknown): boolean {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function notASpec(source: SpecPlaces): Issue {
  const message = 'This is not a tag spec yet. Begin with “tagwright: 1”, then shapes and pieces.';
  return { code: 'not-a-spec', severity: 'error', path: [], range: source.range([]), message };
}
