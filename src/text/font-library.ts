/** Finds and opens the font a spec asks for. Nothing here throws: faults are answers, to be shown at their line. */

import { distance } from 'fastest-levenshtein';
import { bundledFileName, bundledFonts } from './bundled-fonts.ts';
import { faceId, openFace, type FaceSource, type FontFace } from './font-face.ts';
import type { FontFiles } from './font-files.ts';
import { describeFont, descriptiveTables } from './font-description.ts';
import { nearestStyle, weightWithin, type FontStyle } from './font-match.ts';
import { BadFontError } from './bad-font.ts';
import { scanTables, unpacked } from './sfnt.ts';
import { styleInName, type StyledName } from './style-names.ts';
import { indexSystemFonts, type SystemFonts } from './system-fonts.ts';

/**
 * A family by name, looked up among the bundled fonts and then on the computer, or a font file by its path, as
 * `FontFiles.read` takes it. The nearest available weight and style is used.
 */
export type FontQuery = { readonly weight: number; readonly italic: boolean } & (
  | { readonly family: string }
  | { readonly file: string }
);

export interface FontProblem {
  readonly kind: 'unknown-font' | 'bad-font';
  /** One sentence in plain words. */
  readonly message: string;
  /** Families with a similar name. */
  readonly suggestions: readonly string[];
}

export type FontAnswer = { readonly face: FontFace } | { readonly problem: FontProblem };

type ReadFont = (path: string) => Promise<Uint8Array>;

export class FontLibrary {
  readonly #files: FontFiles;
  #system: Promise<SystemFonts> | undefined;
  readonly #families = new Map<string, Promise<FontAnswer>>();
  /** By content, so that the same bytes are opened once. Faces stay open for the life of the library. */
  readonly #faces = new Map<string, Promise<FontFace>>();

  constructor(files: FontFiles) {
    this.#files = files;
  }

  /** `read`: reads a font file that is asked for by its path. */
  load(query: FontQuery, read: ReadFont = (path) => this.#files.read(path)): Promise<FontAnswer> {
    // Not cached by path: a file beside the spec may be replaced while the spec is open.
    if ('file' in query) return this.#openFile(query, read);
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

  /** The fonts installed on the computer; read once, which may take a second if there are many. */
  installed(): Promise<SystemFonts> {
    return this.#systemFonts();
  }

  /** Forgets the installed fonts, for when they may have changed. */
  refresh(): void {
    this.#system = undefined;
    this.#families.clear();
  }

  async #openFamily(query: FontQuery & { readonly family: string }): Promise<FontAnswer> {
    const name = query.family.trim().toLowerCase();
    const bundled = bundledFonts.find((font) => font.family.toLowerCase() === name);
    const bundledFace = bundled && nearestStyle(bundled.faces, query);
    if (bundledFace) {
      return this.#open(() => this.#files.bundled(bundledFileName(bundledFace)), bundled.family);
    }
    const { byName } = await this.#systemFonts();
    const face = nearestStyle(byName.get(name) ?? [], query);
    if (!face) {
      const families = await this.families();
      const styled = styleInName(query.family);
      if (styled && families.some((family) => family.toLowerCase() === styled.family.toLowerCase()))
        return problem('unknown-font', `“${query.family}” is “${styled.family}” with ${styleWords(styled)}.`);
      const suggestions = similarNames(query.family, families);
      return problem(
        'unknown-font',
        `There is no font “${query.family}” among those bundled or installed. A font file beside the spec works as well: “font: name.ttf”.`,
        suggestions,
      );
    }
    return this.#open(
      () => this.#files.read(face.path),
      face.family,
      () => Promise.resolve({ index: face.index, variations: variationsFor(face, query.weight) }),
    );
  }

  #openFile(query: FontQuery & { readonly file: string }, read: ReadFont): Promise<FontAnswer> {
    const label = query.file.split(/[/\\]/).at(-1)!;
    return this.#open(
      () => read(query.file),
      label,
      async (bytes) => {
        const face = nearestStyle(await stylesIn(bytes), query)!;
        return { index: face.index, variations: variationsFor(face, query.weight) };
      },
    );
  }

  async #open(
    read: () => Promise<Uint8Array>,
    label: string,
    choose: (bytes: Uint8Array) => Promise<FaceChoice> = () => Promise.resolve({ index: 0, variations: {} }),
  ): Promise<FontAnswer> {
    let bytes;
    try {
      bytes = await read();
    } catch {
      return problem('bad-font', `The font “${label}” cannot be found or read.`);
    }
    try {
      const plain = await unpacked(bytes);
      const source = { bytes: plain, ...(await choose(plain)) };
      const id = faceId(source);
      let face = this.#faces.get(id);
      if (!face) {
        face = openFace(source, this.#files.shaperWasm);
        this.#faces.set(id, face);
      }
      return { face: await face };
    } catch (error) {
      const fault = error instanceof BadFontError ? error.message : 'cannot be used';
      return problem('bad-font', `The font “${label}” ${fault}.`);
    }
  }

  #systemFonts(): Promise<SystemFonts> {
    // If installed fonts cannot be listed, there are still the bundled ones.
    this.#system ??= indexSystemFonts(this.#files).catch(() => ({ byName: new Map(), families: [] }));
    return this.#system;
  }
}

/** A face of a file, and the settings of its axes. */
type FaceChoice = Omit<FaceSource, 'bytes'>;

/** The faces of a file, in its order. */
async function stylesIn(bytes: Uint8Array): Promise<(FontStyle & { readonly index: number })[]> {
  const read = (start: number, end: number): Promise<Uint8Array> => Promise.resolve(bytes.subarray(start, end));
  return (await scanTables(read, descriptiveTables)).map((tables, index) => {
    const { weight, weightAxis, italic, width } = describeFont(tables);
    return { index, weight: weightAxis ?? weight, italic, width };
  });
}

function variationsFor(style: FontStyle, weight: number): FaceChoice['variations'] {
  return typeof style.weight === 'number' ? {} : { wght: weightWithin(style, weight) };
}

function problem(kind: FontProblem['kind'], message: string, suggestions: readonly string[] = []): FontAnswer {
  return { problem: { kind, message, suggestions } };
}

/** The keys that set a style, as a message names them. */
function styleWords({ weight, italic }: StyledName): string {
  return [...(weight === undefined ? [] : [`“weight: ${weight}”`]), ...(italic ? ['“italic: true”'] : [])].join(
    ' and ',
  );
}

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
