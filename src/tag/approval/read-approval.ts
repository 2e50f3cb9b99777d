/** Reads the record of what a customer approved. */

import type { ValidateFunction } from 'ajv';
import { memoizeRecent } from '../../core/recent.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { ApprovalRecord, ApprovedTag } from './types.generated.ts';
import validateGenerated from './validate.generated.mjs';

export type { ApprovalRecord, ApprovedPiece, ApprovedTag, ApprovedTie } from './types.generated.ts';

/** What was approved of one tag. */
export interface Approval {
  /** The day, such as 2026-11-30. */
  readonly on: string;
  readonly note?: string;
  /** The cell that names the tag's row, in a batch. */
  readonly name?: string;
  /** Several where rows have one name; none if it was not there yet. */
  readonly tags: readonly ApprovedTag[];
  /** Where the spec names the record. */
  readonly path: YamlPath;
}

const validate = validateGenerated as ValidateFunction<ApprovalRecord>;

/** `undefined` for a text that is no such record. Read once for all rows of a batch. */
export const readApproval = memoizeRecent(2, (text): ApprovalRecord | undefined => {
  try {
    const value: unknown = JSON.parse(text);
    return validate(value) ? value : undefined;
  } catch {
    return undefined;
  }
});

/** What the record has for a tag. `name` is the cell that names its row; absent without a batch. */
export function approvalOf(record: ApprovalRecord, name: string | undefined, path: YamlPath): Approval {
  const { approved_on: on, note } = record;
  return {
    on,
    ...(note === undefined ? {} : { note }),
    ...(name === undefined ? {} : { name }),
    tags: record.tags.filter((tag) => tag.name === name),
    path,
  };
}
