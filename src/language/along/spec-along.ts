/** The spec that goes along with the files of a tag: of this tag alone, with the fonts and drawings it needs beside it. */

import type { YamlPath } from '../../core/issue.ts';
import { isGroup } from '../../core/values.ts';
import type { Report } from '../../engine/engine.ts';
import { freeFileName } from '../../export/file-names.ts';
import type { Job } from '../../export/job/job.ts';
import { singleLine } from '../../spec/read/single-line.ts';
import { joinedPath } from '../../spec/files/used-files.ts';
import { bundledFonts } from '../../text/bundled-fonts.ts';
import { embeddingInWords } from '../../text/embedding.ts';
import type { FontLibrary } from '../../text/font-library.ts';
import { nameKindOf, schemasAt } from '../schema.ts';
import { fileKind, selfContained } from '../self-contained.ts';
import { loadFiles } from '../../tag/load.ts';
import { roomsIn } from './room-for.ts';
import type { RoomAt } from './room-for.ts';
import { inText, specOfTag } from './spec-of-tag.ts';
import type { TagReport } from './spec-of-tag.ts';
import { specText } from './spec-text.ts';

/** Where fonts and drawings are read from. */
export interface AlongFiles {
  readonly fonts: FontLibrary;
  readonly read: (path: string) => Promise<Uint8Array>;
  readonly locate: (relative: string) => string | undefined;
}

/** The job with its spec, or with the reason why that cannot go along. */
export async function withSpec(
  job: Job,
  report: TagReport & Pick<Report, 'source' | 'uses'>,
  from: AlongFiles,
): Promise<Job> {
  const alone = selfContained(report.source, report.uses);
  if ('problem' in alone)
    return { ...job, along: { files: {}, lacking: [`The spec is not in the pack. ${alone.problem}`] } };
  const found = new FilesAlong(from);
  const spec = await found.renamed(specOfTag(alone.text, report, await roomsOf(report, from)), []);
  const { files, lacking } = found;
  return {
    ...job,
    along: { text: specText(spec as Record<string, unknown>, accepted(report)), files, lacking: [...lacking] },
  };
}

/** Of a batch alone: by itself, lettering has the room that its own letters need. */
async function roomsOf({ model, batch }: TagReport, { fonts: library, read, locate }: AlongFiles): Promise<RoomAt[]> {
  if (!model || !batch) return [];
  const { fonts } = await loadFiles(model, { library, read, locate, beside: () => Promise.resolve([]) });
  return roomsIn(model, ({ generator }) => (generator.kind === 'text' ? fonts.get(generator) : undefined));
}

/** The comments that accept problems, at the entry of each; reasons may hold names. */
function accepted({ accepted: all }: TagReport): Map<string, string> {
  const codes = new Map<string, Set<string>>();
  for (const { code, path } of all) {
    const place = inText(path).slice(0, 2).join('/');
    codes.set(place, (codes.get(place) ?? new Set()).add(code));
  }
  return new Map([...codes].map(([place, of]) => [place, `accept ${[...of].join(', ')}: accepted when it was made`]));
}

class FilesAlong {
  readonly files: Record<string, Uint8Array> = {};
  /** What is not in the pack, in sentences. */
  readonly lacking = new Set<string>();
  readonly #from: AlongFiles;
  /** Names in the pack by full path. */
  readonly #names = new Map<string, string>();

  constructor(from: AlongFiles) {
    this.#from = from;
  }

  /** The value with the names of files as they are in the pack: in folders of their own, apart from what is cut. */
  async renamed(value: unknown, path: YamlPath): Promise<unknown> {
    if (Array.isArray(value)) {
      const items: unknown[] = [];
      for (const [at, each] of value.entries()) items.push(await this.renamed(each, [...path, at]));
      return items;
    }
    if (isGroup(value)) {
      const entries: [string, unknown][] = [];
      for (const [key, each] of Object.entries(value)) entries.push([key, await this.renamed(each, [...path, key])]);
      return Object.fromEntries(entries);
    }
    if (typeof value !== 'string') return value;
    const kind = fileKind(value, path);
    if (kind) return this.#along(value, kind);
    if (schemasAt(path).some((schema) => nameKindOf(schema) === 'font')) this.#tellInstalled(value);
    return value;
  }

  async #along(written: string, kind: 'font' | 'drawing'): Promise<string> {
    const file = this.#from.locate(joinedPath('', written));
    if (file === undefined) return written;
    const known = this.#names.get(file);
    if (known !== undefined) return known;
    const plain = written.slice(written.lastIndexOf('/') + 1);
    const [, stem = '', ending = ''] = /^(.*?)(\.[^.]*)?$/.exec(plain)!;
    const taken = new Set([...this.#names.values()].map((each) => each.replace(/\.[^.]*$/, '')));
    const name = `${freeFileName(`${kind}s/${stem}`, taken)}${ending}`;
    this.#names.set(file, name);
    if (kind === 'font' && !(await this.#mayGive(file, plain))) return name;
    try {
      this.files[name] = await this.#from.read(file);
    } catch {
      this.lacking.add(`“${plain}”, which the spec asks for, cannot be read and is not in the pack.`);
    }
    return name;
  }

  /** Only what may be installed from a file that it is in may be handed on as a file (OpenType specification, `fsType`). */
  async #mayGive(file: string, name: string): Promise<boolean> {
    const answer = await this.#from.fonts.load({ file, weight: 400, italic: false });
    if ('problem' in answer) return true;
    const { family, licence } = answer.face;
    if (licence.embedding === 'installable') return true;
    this.lacking.add(
      `The font ${family} (“${name}”) is not in the pack: according to its file, it ${embeddingInWords(licence)}. Whoever opens the spec needs the font, beside it.`,
    );
    return false;
  }

  #tellInstalled(family: string): void {
    const isThere = bundledFonts.some((font) => font.family.toLowerCase() === family.trim().toLowerCase());
    if (isThere || family === singleLine) return;
    this.lacking.add(
      `The font ${family} is not in the pack: it is installed where the pack was made. Whoever opens the spec needs it installed too.`,
    );
  }
}
