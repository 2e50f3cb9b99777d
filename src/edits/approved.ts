/** The file that keeps what the customer approved, and the line of the spec that names it. */

import type { TextEdit } from '../core/issue.ts';
import { specName } from '../core/names.ts';
import { isGroup } from '../core/values.ts';
import type { SpecSource } from '../spec/yaml/source.ts';
import { addAboveShapes } from './above-shapes.ts';

export interface ApprovalPlace {
  /** Relative to the folder of the spec. */
  readonly file: string;
  /** Absent if the spec names it already. */
  readonly edit?: TextEdit;
}

/** `undefined` if the spec has no place for the line. `fileName` is that of the spec. */
export function approvalPlace(source: SpecSource, fileName: string): ApprovalPlace | undefined {
  const named = isGroup(source.value) ? source.value['approved'] : undefined;
  if (typeof named === 'string') return { file: named };
  const file = `${specName(fileName)}.approved.json`;
  const edit = addAboveShapes(source, 'approved', quoted(file));
  return edit && { file, edit };
}

/** Letters, digits, dots and dashes stand as they are. */
function quoted(file: string): string {
  return /^[\p{L}\p{N}][\p{L}\p{N}_.-]*$/u.test(file) ? file : JSON.stringify(file);
}
