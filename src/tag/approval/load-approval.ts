/** Loads the record of what a customer approved. */

import type { Finding } from '../../core/issue.ts';
import { oncePer } from '../../core/once-per.ts';
import { textOfBytes } from '../../core/text-of-bytes.ts';
import { filesMeant } from '../../spec/files/near-files.ts';
import type { Surroundings } from '../../spec/files/near-files.ts';
import type { TagModel } from '../../spec/model/model.ts';
import { didYouMean } from '../../spec/schema/suggest.ts';
import { readApproval } from './read-approval.ts';
import type { ApprovalRecord } from './read-approval.ts';

interface ApprovalLoading extends Surroundings {
  readonly read: (path: string) => Promise<Uint8Array>;
}

/** All rows of a batch are read from the same bytes where each file is read once. */
const recordIn = oncePer((bytes: Uint8Array) => readApproval(textOfBytes(bytes)));

/** `undefined` for a spec that names no record. The tag can be made without: what cannot be read is a warning. */
export async function loadApproval(
  { approved }: Pick<TagModel, 'approved'>,
  loading: ApprovalLoading,
): Promise<ApprovalRecord | Finding | undefined> {
  if (!approved) return undefined;
  const { file: name, path } = approved;
  const fault = { code: 'bad-file', severity: 'warning', path } as const;
  const file = loading.locate(name);
  if (file === undefined) return { ...fault, message: `“${name}” is not inside the spec's folder.` };
  let bytes: Uint8Array;
  try {
    bytes = await loading.read(file);
  } catch {
    const suggestions = await filesMeant(name, loading);
    const message = `The record of approval “${name}” cannot be found or read.${didYouMean(suggestions)}`;
    return { ...fault, message, suggestions };
  }
  return (
    recordIn(bytes) ?? {
      ...fault,
      message: `“${name}” is no record of an approval, or is damaged: record the approval once more.`,
    }
  );
}
