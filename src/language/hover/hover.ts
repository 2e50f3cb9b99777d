/** Hover text for the word under the pointer, as Markdown. Text from the spec is included as plain text only. */

import type { Report } from '../../engine/engine.ts';
import type { Region } from '../../geometry/types.ts';
import type { TextRange, YamlPath } from '../../core/issue.ts';
import { parseLength } from '../../core/length.ts';
import type { Units } from '../../core/units.ts';
import type { SpecSource } from '../../spec/yaml/source.ts';
import { generatorKeys } from '../../spec/read/read-generator.ts';
import { columnsIn } from '../../spec/batch/batch.ts';
import { noUses } from '../../spec/files/used-files.ts';
import { centringDocs } from './centring.ts';
import { keyDocs, kindOfValue } from './docs.ts';
import { shortLength, sizeText } from '../../core/units.ts';
import { hitAt } from '../navigation/hit.ts';
import type { Hit } from '../navigation/hit.ts';
import { isHangerOf, loadDocs, pieceDocs } from './piece-docs.ts';
import { pictureOf } from './picture.ts';
import { escapeMarkdown } from './escape-markdown.ts';
import { referenceSectionOf } from '../reference-sections.ts';
import { alternatives, isLength, nameKindOf, nodesAt, schemasAt } from '../schema.ts';
import { sizeOfRegion } from './sizes.ts';
import type { FontNote } from '../workspace-names.ts';
import { isGroup, valueAt, unitsOf } from '../../core/values.ts';
import { sharedDocs, sharedValue } from '../shared-values.ts';

export interface Hover {
  readonly markdown: string;
  readonly range: TextRange;
  /** Section of the guide's reference, if the word is a key. */
  readonly section?: string;
}

/** `report` may be of an earlier text, or absent; computed facts are then given as far as they are known. */
export function hoverAt(
  source: SpecSource,
  offset: number,
  report: Report | undefined,
  fonts: readonly FontNote[],
): Hover | undefined {
  const hit = hitAt(source.tree, offset);
  if (!hit) return undefined;
  const parts = hit.on === 'key' ? aboutKey(hit, source, report) : aboutValue(hit, source, report, fonts);
  const markdown = parts.filter((part) => part !== '').join('\n\n');
  if (markdown === '') return undefined;
  const section = hit.on === 'key' ? referenceSectionOf(hit.path) : undefined;
  return { markdown, range: hit.range, ...(section === undefined ? {} : { section }) };
}

function aboutKey({ path, word }: Hit, source: SpecSource, report: Report | undefined): string[] {
  const [section, name] = path;
  if (path.length === 2 && section === 'shapes') return aboutShape(String(name), source, report);
  const tag = report?.tag;
  if (path.length === 2 && section === 'pieces') return aboutPiece(String(name), report);
  const [node] = nodesAt(path);
  if (!node) return [];
  const key = String(word.value);
  const pieceOfHanger = tag?.pieces.find((piece) => isHangerOf(piece, path));
  const load = pieceOfHanger && tag ? loadDocs(pieceOfHanger, tag) : '';
  const centring = tag && ['place', 'by', 'fit'].includes(key) ? centringDocs(path, tag) : '';
  return [
    `**${escapeMarkdown(key)}** – ${kindOfValue(node, valueAt(source.value, path))}`,
    keyDocs(key, node),
    lengthLine(path, source),
    centring,
    load,
  ];
}

/** Contents, in the row that is drawn, of the columns that a value refers to. */
function columnDocs(value: unknown, report: Report | undefined): string {
  const row = report?.batch?.rows[report.row];
  if (!row || typeof value !== 'string') return '';
  return columnsIn(value)
    .map(
      ({ column }) =>
        `**${escapeMarkdown(column)}** – column; “${escapeMarkdown(row.label)}” has ${cellText(row.cells.get(column))}`,
    )
    .join('\n\n');
}

function cellText(cell: string | undefined): string {
  return (cell ?? '').trim() === '' ? 'nothing there' : `“${escapeMarkdown(cell!)}”`;
}

function aboutValue(
  { path, word }: Hit,
  source: SpecSource,
  report: Report | undefined,
  fonts: readonly FontNote[],
): string[] {
  const columns = columnDocs(word.value, report);
  if (columns !== '') return [columns];
  const kind = schemasAt(path)
    .map(nameKindOf)
    .find((each) => each !== undefined);
  const name = String(word.value);
  if (kind === 'shape' || kind === 'part') return aboutShape(name, source, report);
  if (kind === 'piece') return aboutPiece(name, report);
  if (kind === 'font') return aboutFont(name, fonts);
  if (kind === 'stock' || kind === 'tie' || kind === 'machine') {
    const value = sharedValue(`${kind}s`, name, source.value, report?.uses ?? noUses);
    return value ? [sharedDocs(name, value)] : [];
  }
  const [node] = nodesAt(path);
  const key = path.findLast((step) => typeof step === 'string');
  if (!node || key === undefined || kind) return [];
  const isWord = alternatives(node).some((option) => option.enum?.some((each) => each === word.value));
  return [lengthLine(path, source), isWord ? `**${escapeMarkdown(name)}**\n\n${keyDocs(key, node)}` : ''];
}

/** A length in both units, if the value is a length. */
function lengthLine(path: YamlPath, source: SpecSource): string {
  const written = valueAt(source.value, path);
  if (typeof written !== 'string' && typeof written !== 'number') return '';
  if (!schemasAt(path).some(isLength)) return '';
  const units = unitsOf(source.value);
  const length = parseLength(written, units);
  if (!('mm' in length)) return '';
  const own = typeof written === 'number' ? `${written} ${units}` : written.trim();
  const others = [shortLength(length.mm, 'mm'), shortLength(length.mm, 'in')].filter((each) => each !== own);
  return [escapeMarkdown(own), ...others].join(' = ');
}

function aboutShape(name: string, source: SpecSource, report: Report | undefined): string[] {
  const spec = valueAt(source.value, ['shapes', name]);
  const generator = isGroup(spec) ? generatorKeys.find((key) => Object.hasOwn(spec, key)) : undefined;
  const head = `**${escapeMarkdown(name)}**${generator ? ` – ${generator}` : ''}`;
  const shape = report?.model?.shapes.get(name);
  const region = shape && report?.tag?.made.get(shape)?.region;
  return [head, ...(region ? regionDocs(region, report.tag.units) : [])];
}

function regionDocs(region: Region, units: Units): string[] {
  const size = sizeOfRegion(region);
  if (!size) return ['Nothing is left of it.'];
  const picture = pictureOf(region, { width: 240, height: 120 });
  const both = `${sizeText(size.width, size.height, units)} (${sizeText(size.width, size.height, units === 'mm' ? 'in' : 'mm')})`;
  return [`Finished size ${both}`, picture ? `![](${picture.uri})` : ''];
}

function aboutFont(name: string, fonts: readonly FontNote[]): string[] {
  const font = fonts.find(({ family }) => family.toLowerCase() === name.trim().toLowerCase());
  return font ? [`**${escapeMarkdown(font.family)}**`, escapeMarkdown(font.note ?? '')] : [];
}

function aboutPiece(id: string, report: Report | undefined): string[] {
  const piece = report?.tag?.pieces.find((each) => each.id === id);
  return piece && report?.tag ? pieceDocs(piece, report.tag, report.issues) : [];
}
