/** Finds and opens the font a spec asks for. Nothing here throws: what goes wrong is an answer, to be shown at its line. */

import { distance } from 'fastest-levenshtein';
import { bundledFileName, bundledFonts } from './bundled-fonts.ts';
import { faceId, openFace, type FaceSource, type FontFace } from './font-face.ts';
import type { FontFiles } from './font-files.ts';
import { nearestStyle, weightWithin } from './font-match.ts';
import { BadFontError } from './sfnt.ts';
import { indexSystemFonts, type SystemFonts } from './system-fonts.ts';

/**
 * A family by name, which is looked for among the bundled fonts and then on the computer; or a font file by its path, as
 * `FontFiles.read` takes it.
 */
export type FontQuery =
  { readonly family: string; readonly weight: number; readonly italic: boolean } | { readonly file: string };

export interface FontProblem {
  readonly kind: 'unknown-font' | 'bad-font';
  /** One sentence in plain words. */
  readonly message: string;
  /** Families of a similar name. */
  readonly suggestions: readonly string[];
}

export type FontAnswer = { readonly face: FontFace } | { readonly problem: FontProblem };

export class FontLibrary {
  readonly #files: FontFiles;
  #system: Promise<SystemFonts> | undefined;
  readonly #families = new Map<string, Promise<FontAnswer>>();
  /** By content, so that the same bytes are opened once. Faces stay open for the life of the library. */
  readonly #faces = new Map<string, Promise<FontFace>>();

  constructor(files: FontFiles) {
    this.#files = files;
  }

  load(query: FontQuery): Promise<FontAnswer> {
    // Not kept by path: a file beside the spec may be replaced while the spec is open.
    if ('file' in query) return this.#openFile(query.file);
    const key = JSON.stringify([query.family.trim().toLowerCase(), query.weight, query.italic]);
    let answer = this.#families.get(key);
    if (!answer) {
      answer = this.#openFamily(query);
      this.#families.set(key, answer);
    }
    return answer;
  }

  /** Every family that can be asked for by name, bundled ones first. */
  async families(): Promise<string[]> {
    const { families } = await this.#systemFonts();
    return [...new Set([...bundledFonts.map((font) => font.family), ...families])];
  }

  /** Forgets what is installed, for when that may have changed. */
  refresh(): void {
    this.#system = undefined;
    this.#families.clear();
  }

  async #openFamily(query: Extract<FontQuery, { family: string }>): Promise<FontAnswer> {
    const name = query.family.trim().toLowerCase();
    const bundled = bundledFonts.find((font) => font.family.toLowerCase() === name);
    const bundledFace = bundled && nearestStyle(bundled.faces, query);
    if (bundledFace) {
      return this.#open(
        () => this.#files.bundled(bundledFileName(bundledFace)),
        { index: 0, variations: {} },
        bundled.family,
      );
    }
    const { byName } = await this.#systemFonts();
    const face = nearestStyle(byName.get(name) ?? [], query);
    if (!face) {
      const suggestions = similarNames(query.family, await this.families());
      return problem(
        'unknown-font',
        `There is no font “${query.family}” among those bundled or installed.`,
        suggestions,
      );
    }
    const variations = typeof face.weight === 'number' ? {} : { wght: weightWithin(face, query.weight) };
    return this.#open(() => this.#files.read(face.path), { index: face.index, variations }, face.family);
  }

  #openFile(path: string): Promise<FontAnswer> {
    return this.#open(() => this.#files.read(path), { index: 0, variations: {} }, path.split(/[/\\]/).at(-1)!);
  }

  async #open(read: () => Promise<Uint8Array>, rest: Omit<FaceSource, 'bytes'>, label: string): Promise<FontAnswer> {
    let bytes;
    try {
      bytes = await read();
    } catch {
      return problem('bad-font', `The font “${label}” cannot be found or read.`);
    }
    const source = { bytes, ...rest };
    const id = faceId(source);
    try {
      let face = this.#faces.get(id);
      if (!face) {
        face = openFace(source);
        this.#faces.set(id, face);
      }
      return { face: await face };
    } catch (error) {
      const fault = error instanceof BadFontError ? error.message : 'cannot be used';
      return problem('bad-font', `The font “${label}” ${fault}.`);
    }
  }

  #systemFonts(): Promise<SystemFonts> {
    // Without a list of installed fonts there are still the bundled ones.
    this.#system ??= indexSystemFonts(this.#files).catch(() => ({ byName: new Map(), families: [] }));
    return this.#system;
  }
}

function problem(kind: FontProblem['kind'], message: string, suggestions: readonly string[] = []): FontAnswer {
  return { problem: { kind, message, suggestions } };
}

/** The three nearest by spelling, of those a slip of the keyboard could have meant. */
function similarNames(wanted: string, names: readonly string[]): string[] {
  const target = wanted.trim().toLowerCase();
  return names
    .map((name) => {
      const lower = name.toLowerCase();
      return { name, steps: target !== '' && lower.startsWith(target) ? 1 : distance(target, lower) };
    })
    .filter(({ steps }) => steps <= Math.max(2, target.length / 3))
    .sort((a, b) => a.steps - b.steps)
    .slice(0, 3)
    .map(({ name }) => name);
}
