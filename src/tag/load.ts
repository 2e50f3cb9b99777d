/** Loads the font and drawing files that a model names, before anything is made of them. */

import type { Finding } from '../core/issue.ts';
import { fontFilesFor, filesMeant } from '../spec/files/near-files.ts';
import { didYouMean } from '../spec/schema/suggest.ts';
import type { PieceModel, TagModel } from '../spec/model/model.ts';
import type { Shape, TextGenerator } from '../spec/model/shape-model.ts';
import type { FontFace } from '../text/font-face.ts';
import { isFontFile } from '../text/font-files.ts';
import type { FontLibrary } from '../text/font-library.ts';
import { contentHash } from '../text/content-hash.ts';
import { faceOf, fontFindings, fontsUsed } from './lettering/fonts-used.ts';
import type { FontUse, UsedFont } from './lettering/fonts-used.ts';
import { loadApproval } from './approval/load-approval.ts';
import type { ApprovalRecord } from './approval/read-approval.ts';
import { leftOutFindings } from './drawing/left-out.ts';
import type { LoadedDrawing } from './resources.ts';
import { parseSvgDrawing } from './drawing/svg-drawing.ts';

export interface Loaded {
  readonly fonts: ReadonlyMap<TextGenerator, FontFace>;
  readonly drawings: ReadonlyMap<string, LoadedDrawing>;
  readonly findings: readonly Finding[];
  readonly fontsUsed: readonly UsedFont[];
  readonly approved?: ApprovalRecord;
  /** Every file beside the spec that was asked for, found or not: when one changes, the tag changes too. */
  readonly files: readonly string[];
}

export interface Loading {
  readonly library: FontLibrary;
  readonly read: (path: string) => Promise<Uint8Array>;
  /** Names of the files in the folder of a file. */
  readonly beside: (path: string) => Promise<readonly string[]>;
  /** The full path of a file given relative to the spec's folder; `undefined` if it may not be read. */
  readonly locate: (relative: string) => string | undefined;
}

export async function loadFiles(model: TagModel, loading: Loading): Promise<Loaded> {
  const settings: FontUse[] = [];
  const drawings = new Map<string, LoadedDrawing>();
  const findings: Finding[] = [];
  const files = new Set<string>();
  const locate = (relative: string): string | undefined => {
    const path = loading.locate(relative);
    if (path !== undefined) files.add(path);
    return path;
  };
  const shapes = everyShape(model);
  // Lines that one shape leaves out may be what another is made of.
  const linedFiles = new Set(
    [...shapes].flatMap(({ generator }) => (generator.kind === 'drawing' && generator.asLines ? [generator.file] : [])),
  );
  const inPieces = new Set(model.pieces.flatMap((piece) => [...shapesOf(piece)]));
  // What is not used lacks nothing.
  const ofDrawing = (
    shape: Shape,
    drawing: LoadedDrawing,
    generator: { readonly file: string; readonly asLines: boolean },
  ): Finding[] =>
    drawnFindings(drawing, generator, linedFiles, [...shape.path, 'drawing']).filter(
      ({ code }) => code !== 'not-drawn' || inPieces.has(shape),
    );
  for (const shape of shapes) {
    const { generator } = shape;
    if (generator.kind === 'text') {
      const faces: FontFace[] = [];
      const names = [generator.font, ...(generator.fallbacks ?? [])];
      for (const [index, name] of names.entries()) {
        const path = [...shape.path, 'font', ...(generator.fallbacks ? [index] : [])];
        const found = await loadFont(name, path, generator, locate, loading);
        if ('code' in found) findings.push(found);
        else faces.push(found);
      }
      const [face, ...others] = faces;
      if (faces.length === names.length && face) settings.push({ shape, text: generator, face, others });
    } else if (generator.kind === 'drawing') {
      const path = [...shape.path, 'drawing'];
      const known = drawings.get(generator.file);
      if (known) {
        findings.push(...ofDrawing(shape, known, generator));
        continue;
      }
      const file = locate(generator.file);
      const result =
        file === undefined
          ? outsideFinding(path, generator.file)
          : await loadDrawing(file, generator.file, path, loading);
      if ('code' in result) findings.push(result);
      else {
        drawings.set(generator.file, result);
        findings.push(...ofDrawing(shape, result, generator));
      }
    }
  }
  const approved = await loadApproval(model, { ...loading, locate });
  if (approved && 'code' in approved) findings.push(approved);
  return {
    ...(approved && !('code' in approved) ? { approved } : {}),
    fonts: new Map(settings.map((setting) => [setting.text, faceOf(setting)])),
    drawings,
    findings: [...findings, ...fontFindings(settings)],
    fontsUsed: fontsUsed(settings),
    files: [...files],
  };
}

async function loadFont(
  name: string,
  path: Finding['path'],
  { weight, italic }: TextGenerator,
  locate: (relative: string) => string | undefined,
  { library, read, beside, locate: unwatched }: Loading,
): Promise<FontFace | Finding> {
  const isFile = isFontFile(name);
  const file = isFile ? locate(name) : undefined;
  if (isFile && file === undefined) return outsideFinding(path, name);
  const answer = await library.load(
    file === undefined ? { family: name, weight, italic } : { file, weight, italic },
    read,
  );
  if ('face' in answer) return answer.face;
  const { kind, message, suggestions } = answer.problem;
  const inFolder = unwatched(isFile ? name : 'font.ttf');
  const near = inFolder === undefined ? [] : fontFilesFor(name, await beside(inFolder).catch(() => []));
  const fault = { code: kind, severity: 'error', path } as const;
  if (near.length === 0) {
    const meant = isFile ? await filesMeant(name, { locate: unwatched, beside }) : suggestions;
    return { ...fault, message: message + didYouMean(meant), suggestions: meant };
  }
  const said = isFile ? message : `No font of this computer is called “${name}”.`;
  const names = near.map((file) => `“${file}”`).join(', ');
  return { ...fault, message: `${said} Beside the spec there is ${names}.`, suggestions: near };
}

/** Reports what a shape leaves out of its drawing. */
function drawnFindings(
  { shapes, lines, leftOut }: LoadedDrawing,
  { file, asLines }: { readonly file: string; readonly asLines: boolean },
  linedFiles: ReadonlySet<string>,
  path: Finding['path'],
): Finding[] {
  const fault = (words: string): Finding[] => [
    { code: 'bad-file', severity: 'error', path, message: `The drawing “${file}” ${words}.` },
  ];
  if (asLines && lines.length === 0) return fault('has no strokes, and “lines” keeps only those');
  if (!asLines && shapes.length === 0)
    return fault('has only lines without a fill; only filled shapes are used unless “lines: true” keeps them as lines');
  // The paint of strokes and areas does not matter for lines.
  if (asLines)
    return leftOutFindings(file, { ...leftOut, line: 0, thickness: 0, white: 0, pattern: 0, outline: 0 }, path);
  return leftOutFindings(
    file,
    linedFiles.has(file) ? { ...leftOut, line: 0, thickness: 0, outline: 0 } : leftOut,
    path,
  );
}

function outsideFinding(path: Finding['path'], name: string): Finding {
  return { code: 'bad-file', severity: 'error', path, message: `“${name}” is not inside the spec's folder.` };
}

async function loadDrawing(
  file: string,
  name: string,
  path: Finding['path'],
  loading: Loading,
): Promise<LoadedDrawing | Finding> {
  const fault = (message: string): Finding => ({ code: 'bad-file', severity: 'error', path, message });
  let bytes: Uint8Array;
  try {
    bytes = await loading.read(file);
  } catch {
    const suggestions = await filesMeant(name, loading);
    return { ...fault(`The drawing “${name}” cannot be found or read.${didYouMean(suggestions)}`), suggestions };
  }
  const parsed = parseSvgDrawing(new TextDecoder().decode(bytes));
  if ('problem' in parsed) return fault(`The drawing “${name}” ${parsed.problem}.`);
  return { id: contentHash([bytes]), ...parsed };
}

/** Each shape once, including those written in place. */
export function everyShape(model: TagModel): Set<Shape> {
  const found = new Set<Shape>();
  for (const shape of model.shapes.values()) addDependencies(shape, found);
  for (const piece of model.pieces) for (const shape of shapesOf(piece)) found.add(shape);
  return found;
}

/** All shapes that a piece is made of, with those they are made from, fitted into or placed on. */
export function shapesOf({ body, cut, score, engrave, hangers }: PieceModel): Set<Shape> {
  const found = new Set<Shape>();
  for (const { shape } of [...body, ...cut, ...score, ...engrave]) addDependencies(shape, found);
  for (const { on } of hangers) if (on) addDependencies(on.shape, found);
  return found;
}

/** A shape with all that it is made from, fitted into or placed on. */
export function withDependencies(shape: Shape): Set<Shape> {
  const found = new Set<Shape>();
  addDependencies(shape, found);
  return found;
}

function addDependencies(shape: Shape, found: Set<Shape>): void {
  if (found.has(shape)) return;
  found.add(shape);
  const { generator, modifiers } = shape;
  if ('shapes' in generator) for (const each of generator.shapes) addDependencies(each, found);
  if ('shape' in generator) addDependencies(generator.shape, found);
  if (modifiers.fit) addDependencies(modifiers.fit.shape, found);
  if (modifiers.place) addDependencies(modifiers.place.shape, found);
}
