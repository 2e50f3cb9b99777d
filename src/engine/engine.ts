/** From the text of a spec to a checked tag: the entry point of the editor, the command line and the tests. */

import { isWithin } from '../core/values.ts';
import { textOfBytes } from '../core/text-of-bytes.ts';
import { runChecks } from '../checks/all.ts';
import { hangingSides } from '../checks/uneven-hanging.ts';
import type { HangingSide } from '../checks/uneven-hanging.ts';
import { fittedHeights } from '../checks/uneven-sizes.ts';
import type { FittedHeight, SharedSize } from '../checks/uneven-sizes.ts';
import { boundsOf, boxCentre } from '../geometry/measure.ts';
import type { Finding, Issue } from '../core/issue.ts';
import { issueKinds } from '../core/issue-kinds.ts';
import type { IssueCode } from '../core/issue-kinds.ts';
import { judgeIssues } from './severity.ts';
import type { AcceptedIssue, Severities } from './severity.ts';
import { acceptComments } from '../spec/accept-comments.ts';
import { inUnits } from '../core/figures.ts';
import { labelOf } from '../spec/batch/batch.ts';
import type { Batch } from '../spec/batch/batch.ts';
import type { Units } from '../core/units.ts';
import type { TagModel } from '../spec/model/model.ts';
import { parseSpec, readShared } from '../spec/parse.ts';
import type { ParsedSpec } from '../spec/parse.ts';
import { SpecSource, sourceOf } from '../spec/yaml/source.ts';
import { loadUses } from '../spec/files/used-files.ts';
import type { UsedFile, Uses } from '../spec/files/used-files.ts';
import { approvalOf } from '../tag/approval/read-approval.ts';
import { buildTag, fittedScales, sameSized } from '../tag/build.ts';
import { StageCache } from '../tag/cache.ts';
import type { UsedFont } from '../tag/lettering/fonts-used.ts';
import { lackingShapes, unusedShapes } from '../tag/ghosts.ts';
import type { Ghost, Tag } from '../tag/tag.ts';
import { loadFiles } from '../tag/load.ts';
import type { Loaded } from '../tag/load.ts';
import { sizeKey } from '../tag/resources.ts';
import type { Resources } from '../tag/resources.ts';
import { withSubstitutes } from '../tag/substitutes.ts';
import type { FontFiles } from '../text/font-files.ts';
import { FontLibrary } from '../text/font-library.ts';
import type { UsedIssues } from '../spec/read/scope.ts';
import { nextTask, turnTaker, Clock } from './turns.ts';

/** What may look like two lots beside other tags: what has the size that this tag has room for, and how it hangs. */
export interface Alike {
  readonly fitted: readonly FittedHeight[];
  readonly hung: readonly HangingSide[];
}

export interface Report {
  readonly source: SpecSource;
  /** Absent if the spec as a whole could not be read. */
  readonly tag?: Tag;
  /** The model that `tag` was made from. */
  readonly model?: TagModel;
  /** The batch, if any, and the row this report is of. */
  readonly batch?: Batch;
  readonly row: number;
  /** The sizes that it shares with other tags are not known yet; see `ComputeOptions.isHasty`. */
  readonly isHasty?: boolean;
  /** In a batch: what should be alike on all its tags. */
  readonly alike?: Alike;
  /** In a batch: what has one size on all tags. */
  readonly shared?: readonly SharedSize[];
  /** In text order. */
  readonly issues: readonly Issue[];
  /** Findings accepted by comments in the spec; not among `issues`. */
  readonly accepted: readonly AcceptedIssue[];
  /** The fonts of its lettering, each with the licence it states. */
  readonly fonts: readonly UsedFont[];
  /** The files under `use` as read, and the issues in each, at their place in that file. */
  readonly uses: Uses;
  readonly inUsed?: readonly UsedIssues[];
  /** Full paths of the other files that the spec depends on. */
  readonly files: readonly string[];
  /** Milliseconds: reading the spec, loading files, making the tag, checking it. */
  readonly timings: Readonly<Record<'read' | 'load' | 'make' | 'check' | 'total', number>>;
}

export interface ComputeOptions {
  /** Full path of a file named in the spec; `undefined` where it may not be read. */
  readonly locate: (relative: string) => string | undefined;
  /** Reads the files named in the spec, by full path, in place of the engine: such as each only once for many tags. */
  readonly read?: ReadFile;
  /** Row of a batch, counting from 0; by default the first, and the last if there are fewer. */
  readonly row?: number;
  /** Replaces the spec's own batch. */
  readonly batch?: Batch;
  /**
   * Set while somebody is typing: sizes shared by all tags of a batch keep their last value, or take what fits here,
   * without waiting for every tag to be measured.
   */
  readonly isHasty?: boolean;
  readonly signal?: AbortSignal;
  readonly severities?: Severities;
  /** Called with the number of tags as soon as it is known, before the tag is made. */
  readonly onCount?: (tags: number) => void;
  /**
   * `of` is asked while the tag is checked, of what was found so far; the kind that most likely settles it is looked for `first`. After a
   * yes the rest stays unchecked, and the report ends with that.
   */
  readonly enough?: { readonly first: IssueCode; readonly of: (found: Judged) => boolean };
}

export type ReadFile = (path: string) => Promise<Uint8Array>;

/** A spec as read in one row, before anything is made of it. */
export type ReadSpec = ParsedSpec & Pick<Report, 'uses'>;

/** What a change is judged by. */
export type Judged = Pick<Report, 'tag' | 'issues' | 'accepted'>;

export interface EngineOptions {
  readonly giveWay?: () => Promise<void>;
  readonly stages?: number;
  readonly fonts?: FontLibrary;
}

export class Engine {
  readonly fonts: FontLibrary;
  readonly #files: FontFiles;
  readonly #stages: number | undefined;
  #cache: StageCache;
  readonly #giveWay: () => Promise<void>;
  #lastSizes: (SharedSizes & { readonly key: string }) | undefined;

  /** `giveWay`: yields to other tasks. `stages`: number of results cached for the next time. `fonts`: a library of the same files. */
  constructor(files: FontFiles, { giveWay = nextTask, stages, fonts = new FontLibrary(files) }: EngineOptions = {}) {
    this.#files = files;
    this.#giveWay = giveWay;
    this.#stages = stages;
    this.#cache = new StageCache(stages);
    this.fonts = fonts;
  }

  /** Frees what is kept for the next computation, fonts excepted. */
  forget(): void {
    this.#cache = new StageCache(this.#stages);
  }

  /** Never throws because of a spec's contents; rejects only with the signal's reason once that is aborted. */
  async compute(
    text: string,
    {
      locate,
      read = this.read,
      row: wanted = 0,
      batch: given,
      isHasty = false,
      signal,
      severities = {},
      onCount,
      enough,
    }: ComputeOptions,
  ): Promise<Report> {
    const clock = new Clock();
    const checkpoint = turnTaker(signal, this.#giveWay);
    const reading: Reading = { locate, read };
    const asked = { ...reading, row: wanted, ...(given ? { batch: given } : {}), ...(signal ? { signal } : {}) };
    const { source, uses, model, issues, ...batched } = await this.readSpec(text, asked);
    clock.lap('read');
    const comments = acceptComments(text);
    if (!model) {
      const judged = judgeIssues(issues, source, comments, severities, false);
      return { source, ...batched, ...judged, fonts: [], uses, files: uses.files, timings: clock.laps };
    }
    const rows = batched.batch?.rows.length ?? 1;
    onCount?.(rows);
    const loaded = await this.#load(model, reading);
    await checkpoint();
    clock.lap('load');
    const findings: Finding[] = [];
    const shared =
      rows > 1 && sameSized(model).length > 0
        ? await this.#sameSizes({ source, uses, loaded, rows, given }, reading, isHasty ? 'hasty' : checkpoint)
        : undefined;
    const made = await this.#build(model, loaded, (finding) => findings.push(finding), checkpoint, shared?.sizes);
    const lacking = await this.#lacking(model, loaded, made, checkpoint);
    const approval = loaded.approved && approvalOf(loaded.approved, labelOf(batched), model.approved!.path);
    const tag = { ...made, ...(approval ? { approval } : {}), ghosts: [...unusedShapes(model, made), ...lacking] };
    findings.unshift(...loaded.findings.map((finding) => pinnedToGhost(finding, lacking)));
    clock.lap('make');
    const judgedOf = (all: readonly Finding[], complete: boolean) =>
      judgeIssues([...issues, ...withRanges(all, source, tag.units)], source, comments, severities, complete);
    const enoughFound = enough && {
      first: enough.first,
      of: (found: readonly Finding[]) => enough.of({ tag, ...judgedOf([...findings, ...found], false) }),
    };
    findings.push(...(await runChecks(tag, checkpoint, enoughFound)));
    clock.lap('check');
    // A comment that is idle for one row may be needed by another.
    const complete = rows === 1 && findings.every(({ code }) => issueKinds[code].about === 'making');
    const judged = judgedOf(findings, complete);
    const files = [...uses.files, ...loaded.files];
    const hasty = shared?.areKnown === false ? { isHasty: true } : {};
    const alike = {
      ...(rows > 1 ? { alike: { fitted: fittedHeights(tag), hung: hangingSides(tag) } } : {}),
      ...(shared?.byRow ? { shared: shared.byRow } : {}),
    };
    const { fontsUsed: fonts } = loaded;
    return { source, ...batched, ...hasty, ...alike, tag, model, ...judged, fonts, uses, files, timings: clock.laps };
  }

  /** The spec as `compute` reads it; rejects as that does. */
  async readSpec(
    text: string,
    { locate, read = this.read, row = 0, batch, signal }: Omit<ComputeOptions, 'severities'>,
  ): Promise<ReadSpec> {
    const source = sourceOf(text);
    const textOf = async (path: string) => textOfBytes(await read(path));
    const uses = await loadUses(source, { read: textOf, locate, beside: this.beside });
    signal?.throwIfAborted();
    return { ...parseSpec(source, uses, row, batch), uses };
  }

  /** Checks a file that specs use by itself, without any of them. */
  async checkShared(text: string, locate: ComputeOptions['locate']): Promise<Pick<Report, 'source' | 'issues'>> {
    const source = new SpecSource(text);
    const uses = await loadUses(source, { read: (path) => this.readText(path), locate, beside: this.beside });
    return { source, issues: readShared(source, uses) };
  }

  /** Names of the files in the same folder. */
  readonly beside = (path: string): Promise<readonly string[]> => this.#files.beside?.(path) ?? Promise.resolve([]);

  /** Reads a file beside a spec; rejects if it cannot be read. */
  readonly read: ReadFile = (path) => this.#files.read(path);

  async readText(path: string): Promise<string> {
    return textOfBytes(await this.read(path));
  }

  /** Shapes whose fonts or drawings cannot be loaded, where they would lie on the tag. */
  async #lacking(model: TagModel, loaded: Loaded, made: Tag, checkpoint: () => Promise<void>): Promise<Ghost[]> {
    const whole = await withSubstitutes(model, loaded, this.fonts);
    // Problems of stand-ins are not the writer's fault and are not reported.
    return whole ? lackingShapes(made, await this.#build(model, whole, () => undefined, checkpoint)) : [];
  }

  #load(model: TagModel, reading: Reading): Promise<Loaded> {
    return loadFiles(model, { library: this.fonts, beside: this.beside, ...reading });
  }

  /** Shared sizes: the size that each tag of a batch has room for, cached for the next of its tags. */
  async #sameSizes(
    { source, uses, loaded, rows, given }: BatchInput,
    reading: Reading,
    checkpoint: (() => Promise<void>) | 'hasty',
  ): Promise<Partial<SharedSizes> & { readonly areKnown: boolean }> {
    const faces = [...new Set([...loaded.fonts.values()].map(({ id }) => id))].sort();
    const drawings = [...loaded.drawings.values()].map(({ id }) => id);
    const cells = given?.rows.map((row) => [...row.cells]);
    const key = JSON.stringify([source.text, uses.used.map(textsOf), cells ?? uses.table, faces, drawings]);
    const last = this.#lastSizes;
    if (last?.key === key) return { ...last, areKnown: true };
    // No tag is drawn larger than it has room for, whatever size is asked for.
    if (checkpoint === 'hasty') return { ...(last ? { sizes: last.sizes } : {}), areKnown: false };
    const sizes = new Map<string, number>();
    const byRow = new Map<string, SharedSize & { readonly scales: (number | undefined)[]; most?: number }>();
    for (let row = 0; row < rows; row++) {
      const { model } = parseSpec(source, uses, row, given);
      if (!model) continue;
      const resources = this.#resources(model, await this.#load(model, reading), () => undefined, checkpoint);
      for (const { shape, scale, ofMost } of await fittedScales(model, resources)) {
        const name = sizeKey(shape);
        sizes.set(name, Math.min(scale, sizes.get(name) ?? Infinity));
        const size = byRow.get(name) ?? { path: [...shape.path, 'fit'], scales: [] };
        size.scales[row] = scale;
        if (ofMost !== undefined) size.most = scale / ofMost;
        byRow.set(name, size);
      }
    }
    const found = { sizes, byRow: [...byRow.values()] };
    this.#lastSizes = { key, ...found };
    return { ...found, areKnown: true };
  }

  #build(
    model: TagModel,
    loaded: Loaded,
    report: (finding: Finding) => void,
    checkpoint: () => Promise<void>,
    sameSizes?: ReadonlyMap<string, number>,
  ): Promise<Tag> {
    return buildTag(model, {
      ...this.#resources(model, loaded, report, checkpoint),
      ...(sameSizes ? { sameSizes } : {}),
    });
  }

  #resources(
    model: TagModel,
    loaded: Loaded,
    report: (finding: Finding) => void,
    checkpoint: () => Promise<void>,
  ): Resources {
    return {
      cache: this.#cache,
      minWeb: model.stock.minWeb,
      font: (text) => loaded.fonts.get(text),
      drawing: (file) => loaded.drawings.get(file),
      report,
      checkpoint,
    };
  }
}

/** How the files of a spec are found and read. */
type Reading = Required<Pick<ComputeOptions, 'locate' | 'read'>>;

function textsOf({ source, uses }: UsedFile): readonly unknown[] {
  return [source.text, uses.map(textsOf)];
}

interface SharedSizes {
  /** Largest scale that all tags have room for. */
  readonly sizes: ReadonlyMap<string, number>;
  readonly byRow: readonly SharedSize[];
}

interface BatchInput {
  readonly source: SpecSource;
  readonly uses: Uses;
  readonly loaded: Loaded;
  readonly rows: number;
  /** Takes the place of the spec's own. */
  readonly given: Batch | undefined;
}

/** Pins an error about something missing to the place where it would be drawn. */
function pinnedToGhost(finding: Finding, lacking: readonly Ghost[]): Finding {
  const own = lacking.find(({ path }) => isWithin(finding.path, path));
  const ghost = own ?? lacking[0];
  const bounds = ghost && boundsOf(ghost.region);
  return finding.severity === 'error' && bounds ? { ...finding, points: [boxCentre(bounds)] } : finding;
}

export function withRanges(findings: readonly Finding[], source: SpecSource, units: Units): Issue[] {
  return findings.map((finding) => ({
    ...finding,
    message: inUnits(finding.message, units),
    range: source.range(finding.path),
  }));
}
