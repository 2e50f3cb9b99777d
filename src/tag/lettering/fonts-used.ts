/**
 * The fonts that a tag uses: their licences, for whoever sells the files, and what was substituted for what was asked.
 */

import type { Finding, YamlPath } from '../../core/issue.ts';
import { clip } from '../../core/length.ts';
import { listed } from '../../core/names.ts';
import type { Shape, TextGenerator } from '../../spec/model/shape-model.ts';
import { embeddingInWords } from '../../text/embedding.ts';
import type { FontLicence } from '../../text/font-description.ts';
import { isFontFile } from '../../text/font-files.ts';
import { fallbackFace, lettersByFace } from '../../text/fallback-face.ts';
import type { FontFace } from '../../text/font-face.ts';
import { standsOut } from './fallback-look.ts';

export interface UsedFont {
  readonly family: string;
  /** The font's own name for it, such as “SemiBold Italic”; for a variable font, its name without the variation. */
  readonly style: string;
  readonly weight: number;
  readonly italic: boolean;
  /** As the font file states it, without any guarantee by anyone else. */
  readonly licence: FontLicence;
  /** A clause that follows “The font”. */
  readonly embedding: string;
  /** The texts set in it. */
  readonly paths: readonly YamlPath[];
}

/** One text shape and the face found for it. */
export interface FontUse {
  readonly shape: Shape;
  readonly text: TextGenerator;
  readonly face: FontFace;
  /** Fallback fonts for letters that it lacks. */
  readonly others: readonly FontFace[];
}

/** The face for setting the text: fallbacks are only involved if it lacks a letter. */
export function faceOf({ text, face, others }: FontUse): FontFace {
  return lettersByFace(text.text, [face, ...others]).size > 0 ? fallbackFace([face, ...others]) : face;
}

/** The fallback fonts that its letters come from, with the letters of each; the first font has all others. */
function fallbacksUsed({ text, face, others }: FontUse): ReadonlyMap<FontFace, readonly string[]> {
  return lettersByFace(text.text, [face, ...others]);
}

/** Each face once, in the order of the shapes. */
export function fontsUsed(settings: readonly FontUse[]): UsedFont[] {
  const uses = settings.flatMap((setting) =>
    [setting.face, ...fallbacksUsed(setting).keys()].map((face) => ({ face, shape: setting.shape })),
  );
  const faces = new Map<string, FontFace>(uses.map(({ face }) => [face.id, face]));
  return [...faces.values()].map((face) => {
    const { family, style, weight, italic, licence } = face;
    const paths = uses.filter((each) => each.face.id === face.id).map(({ shape }) => shape.path);
    return { family, style, weight, italic, licence, embedding: embeddingInWords(licence), paths };
  });
}

/** Notes on the faces found. Those on licences are made once per face. */
export function fontFindings(settings: readonly FontUse[]): Finding[] {
  const reported = new Set<string>();
  return settings.flatMap((setting) => {
    const findings = [...otherStyle(setting), ...fallbackFindings(setting)];
    const { face, shape } = setting;
    if (face.licence.embedding === 'restricted' && !reported.has(face.id)) {
      reported.add(face.id);
      const message = `According to its file, the font ${face.family} ${embeddingInWords(face.licence)}. Cut letters contain no font, but read its licence before you sell files made with it.`;
      findings.push({ code: 'font-restricted', severity: 'info', path: [...shape.path, 'font'], message });
    }
    return findings;
  });
}

/** Only notes on styles that the spec asks for explicitly. */
function otherStyle({ shape, text, face }: FontUse): Finding[] {
  const found = (key: 'weight' | 'italic', message: string, taken: string): Finding => ({
    code: 'other-style',
    severity: 'info',
    path: [...shape.path, key],
    message,
    suggestions: [taken],
  });
  const findings: Finding[] = [];
  if (text.weightAsked && face.weight !== text.weight) {
    // A file may call itself by another weight than the one it has.
    const name = isFontFile(text.font) ? `“${clip(text.font.split('/').at(-1)!)}”` : face.family;
    const message = `${name} has no weight ${text.weight}; its ${face.weight} was used instead.`;
    findings.push(found('weight', message, String(face.weight)));
  }
  if (text.italic && !face.italic)
    findings.push(found('italic', `${face.family} has no italic; its upright letters were used instead.`, 'false'));
  return findings;
}

/** Notes on letters from another font: they differ a little from the rest, or so much that anyone sees it. */
function fallbackFindings(setting: FontUse): Finding[] {
  const { shape, face } = setting;
  // A family may come as several files, each with some of its letters.
  const foreign = [...fallbacksUsed(setting)].filter(([other]) => !isOfOneKind(other, face));
  return foreign.map(([other, letters]): Finding => {
    const [those, were, look] = letters.length > 1 ? ['those', 'were', 'look'] : ['that', 'was', 'looks'];
    const seen = standsOut(other, face);
    const quoted = letters.map((letter) => `“${letter}”`);
    const named = other.family === face.family ? `${other.family} ${other.style}` : other.family;
    const message = `${face.family} has no ${listed(quoted, Infinity, 'or')}; ${those} of ${named} ${were} used instead${seen ? `, and ${look} ${seen} than the rest` : ''}.`;
    return { code: 'other-style', severity: seen ? 'warning' : 'info', path: [...shape.path, 'font'], message };
  });
}

function isOfOneKind(a: FontFace, b: FontFace): boolean {
  return a.family === b.family && a.weight === b.weight && a.italic === b.italic;
}
