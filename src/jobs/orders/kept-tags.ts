/** The tags of a job as they were made last: when it changes, those that come out the same are not made again. */

import type { ComputeOptions, ReadFile, ReadSpec, Report } from '../../engine/engine.ts';
import type { IssueCode } from '../../core/issue-kinds.ts';
import { columnsOf } from '../../spec/batch/batch.ts';
import type { BatchRow } from '../../spec/batch/batch.ts';
import { allUsedFiles } from '../../spec/files/used-files.ts';
import { isMadeTogether } from '../../tag/build.ts';
import { packedOutlinesOf } from '../../tag/outlines-only.ts';
import { contentHash } from '../../text/content-hash.ts';
import { FilesReadOnce } from './files-read-once.ts';
import type { TagAsk } from './tag-ask.ts';

/** Tags that are kept although the job does not ask for them just now, for a change that is taken back. */
const usualUnasked = 500;

/** What they say of a file depends on which others there are beside it. */
const aboutOtherFiles: ReadonlySet<IssueCode> = new Set(['bad-file', 'unknown-font']);

interface KeptTag {
  readonly made: Pick<Report, 'row' | 'tag' | 'issues' | 'files'>;
  /** The files that it was made of beside the spec, with their stamps. */
  readonly files: readonly (readonly [file: string, stamp: string])[];
  /** All rows of its batch, if they bear on it; else `undefined`. */
  readonly rows: string | undefined;
  /** Line of its table, if an issue names it; else `undefined`. */
  readonly line: number | undefined;
}

export class KeptTags {
  readonly #kept = new Map<string, KeptTag>();
  readonly #asked = new Set<string>();
  readonly #mostUnasked: number;

  /** Keeps what the job asks for, and of the rest the most recent. */
  constructor(mostUnasked = usualUnasked) {
    this.#mostUnasked = mostUnasked;
  }

  /** For one reading of the job; `read` reads files. */
  begin(read: ReadFile): TagsOfReading {
    this.#asked.clear();
    return new TagsOfReading(this, new FilesReadOnce(read));
  }

  get(key: string): KeptTag | undefined {
    const kept = this.#kept.get(key);
    if (kept) this.keep(key, kept);
    return kept;
  }

  keep(key: string, tag: KeptTag): void {
    this.#asked.add(key);
    // Moved to the end: a Map iterates from its oldest entry, so that those not asked for are the first.
    this.#kept.delete(key);
    this.#kept.set(key, tag);
    if (this.#kept.size > this.#asked.size + this.#mostUnasked) this.#kept.delete(this.#kept.keys().next().value!);
  }
}

interface SpecToMake {
  /** Full path. */
  readonly file: string;
  readonly text: string;
  readonly options: ComputeOptions;
  readonly first: ReadSpec;
}

/** The tags of one reading of a job, made or kept. */
class TagsOfReading {
  readonly #kept: KeptTags;
  readonly #files: FilesReadOnce;

  constructor(kept: KeptTags, files: FilesReadOnce) {
    this.#kept = kept;
    this.#files = files;
  }

  /** Returns tags of the spec by what is asked for; `make` is called for those that are not kept. */
  of(
    spec: SpecToMake,
    make: (ask: TagAsk, read: ReadFile) => Promise<Report>,
  ): (ask: TagAsk) => Promise<Pick<Report, 'row' | 'tag' | 'issues' | 'files'>> {
    const { first } = spec;
    const asked = columnsOf(first.source, first.uses.used);
    const of = hashOf(specKey(spec));
    // What is wrong with the spec's own batch as a whole is told of each of its tags.
    const ofBatch = hashOf([of, first.issues.map(({ code, severity, message }) => [code, severity, message])]);
    const partOf = ({ label, cells, beyond }: BatchRow) => [
      label,
      [...cells].filter(([column]) => asked.has(column)),
      beyond ?? [],
    ];
    let hashed: { readonly rows: readonly BatchRow[]; readonly hash: string } | undefined;
    const hashOfAll = (rows: readonly BatchRow[]): string => {
      if (hashed?.rows !== rows) hashed = { rows, hash: hashOf(rows.map(partOf)) };
      return hashed.hash;
    };
    return async (ask) => {
      const { rows = [] } = ask.batch ?? first.batch ?? {};
      const row = rows[ask.row];
      const key = JSON.stringify([ask.batch ? of : ofBatch, rows.length > 1, row ? partOf(row) : ask.row]);
      const known = this.#kept.get(key);
      const isSame =
        known &&
        (known.rows === undefined || known.rows === hashOfAll(rows)) &&
        (known.line === undefined || known.line === row?.line) &&
        (await this.#areUnchanged(known.files));
      if (isSame) return { ...known.made, row: ask.row };
      const { tag, model, issues, files } = await make(ask, this.#files.read);
      const packed = tag && packedOutlinesOf(tag);
      const made = { row: ask.row, issues, files, ...(packed ? { tag: packed } : {}) };
      if (!issues.some(({ code }) => aboutOtherFiles.has(code))) {
        // What the spec uses is in its key.
        const own = files.filter((file) => !first.uses.files.includes(file));
        this.#kept.keep(key, {
          made,
          files: await Promise.all(own.map(async (file) => [file, await this.#files.stamp(file)] as const)),
          rows: rows.length > 1 && (!model || isMadeTogether(model)) ? hashOfAll(rows) : undefined,
          line: issues.some(({ message }) => message.includes(`line ${row?.line}`)) ? row?.line : undefined,
        });
      }
      return made;
    };
  }

  async #areUnchanged(files: KeptTag['files']): Promise<boolean> {
    for (const [file, stamp] of files) if ((await this.#files.stamp(file)) !== stamp) return false;
    return true;
  }
}

export type { TagsOfReading };

/** All that tags of the spec depend on, but for their rows and the files that they are made of. */
function specKey({ file, text, options: { severities }, first: { uses } }: SpecToMake): unknown[] {
  return [file, text, severities, allUsedFiles(uses.used).map(({ name, source }) => [name, source.text])];
}

function hashOf(value: unknown): string {
  return contentHash([new TextEncoder().encode(JSON.stringify(value))]);
}
