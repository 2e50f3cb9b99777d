/**
 * Writes a tag as a DXF drawing, version AutoCAD 2000 (AC1015), in millimetres: one layer for each operation, each
 * outline one closed polyline of lines and arcs, in working order. The only file that uses @tarikjabiri/dxf.
 */

import type * as Dxf from '@tarikjabiri/dxf';
import { withArcsOnly } from '../geometry/biarcs.ts';
import { startsOf } from '../geometry/contour.ts';
import type { Contour } from '../geometry/contour.ts';
import { channels } from '../look/channels.ts';
import { errorNote, kerfNote } from './job/job.ts';
import type { Job } from './job/job.ts';
import { styleOf } from './page/styles.ts';

/** The newest of the plain versions; fewer programs read later ones. */
const version = 'AC1015';

/** Agrees with Latin-1 on all printable characters. */
const codePage = 'ANSI_1252';

export async function toDxf(job: Job): Promise<Uint8Array> {
  const { tag, plan } = job;
  const library = await import('@tarikjabiri/dxf');
  const dxf = new library.DxfWriter();
  const { header, tables } = dxf;
  // Drops what the library writes for later versions: the name of a program, and a view with styles.
  header.variables.splice(
    header.variables.findIndex(({ name }) => name === '$LASTSAVEDBY'),
    1,
  );
  tables.vPortTable.records.length = 0;
  dxf.setVariable('$ACADVER', { 1: version });
  dxf.setVariable('$DWGCODEPAGE', { 3: codePage });
  dxf.setUnits(library.Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  dxf.setVariable('$EXTMIN', { 10: 0, 20: 0, 30: 0 });
  dxf.setVariable('$EXTMAX', { 10: roundTo(plan.bounds.maxX, 4), 20: roundTo(plan.bounds.maxY, 4), 30: 0 });
  const widths = new Map<string, number>();
  for (const { operation, layer: own, paths } of plan.steps) {
    const { layer, color, lineWidth } = styleOf(tag, operation, own);
    // Layer names are case-insensitive in the format; the first spelling decides the look.
    const known = tables.layerTable.records.find(({ name }) => name.toLowerCase() === layer.toLowerCase());
    const { name } = known ?? dxf.addLayer(layer, nearestIndex(color, library), 'Continuous');
    if (!known) widths.set(name, lineWidth);
    for (const contour of paths.flatMap(({ contours }) => contours)) addPolyline(dxf, contour, name, library);
  }
  const notes = [errorNote(job), tag.title, 'Lengths in mm.', kerfNote(tag, 'mm')];
  const comments = notes.flatMap((note) => (note === undefined ? [] : ['999', note.replace(/\s+/g, ' ')]));
  const drawing = withLineWidths(
    dxf.stringify(),
    tables.layerTable.records.map(({ name }) => widths.get(name) ?? 0),
  );
  return encoded([...comments, drawing, ''].join('\n'));
}

function addPolyline(dxf: Dxf.DxfWriter, fitted: Contour, layerName: string, { LWPolylineFlags }: typeof Dxf): void {
  const contour = withArcsOnly(fitted);
  const starts = startsOf(contour);
  const vertices = contour.segments.map((segment, i) => ({
    point: at(starts[i]!),
    // Bulge is tan(θ/4), positive counter-clockwise; lines have none.
    ...(segment.type === 'arc' ? { bulge: roundTo(Math.tan(segment.sweep / 4), 8) } : {}),
  }));
  if (!contour.closed) vertices.push({ point: at(contour.segments.at(-1)!.to) });
  dxf.addLWPolyline(vertices, { layerName, flags: contour.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None });
}

function at({ x, y }: { readonly x: number; readonly y: number }): { x: number; y: number } {
  return { x: roundTo(x, 5), y: roundTo(y, 5) };
}

function roundTo(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}

/** Index of the format's 255 colours that is nearest to #RRGGBB. */
function nearestIndex(color: string, { aciHex }: typeof Dxf): number {
  const wanted = channels(color);
  const indices = Array.from({ length: 255 }, (_, i) => i + 1);
  const away = (index: number): number =>
    channels(aciHex(index)).reduce((sum, value, i) => sum + (value - wanted[i]!) ** 2, 0);
  return indices.reduce((best, index) => (away(index) < away(best) ? index : best));
}

/** Line widths that the format allows, in hundredths of a mm. */
const lineWeights = [
  0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211,
];

/**
 * Sets the line width of each layer, for which the library always writes the thinnest. `widths`: in mm, in layer order.
 */
function withLineWidths(drawing: string, widths: readonly number[]): string {
  let layer = 0;
  return drawing.replace(/(?<=\n6\nContinuous\n370\n)0(?=\n390\n)/g, () => {
    const wanted = 100 * widths[layer++]!;
    return String(
      lineWeights.reduce((best, each) => (Math.abs(each - wanted) < Math.abs(best - wanted) ? each : best)),
    );
  });
}

/** Encodes as Latin-1; characters outside the code page become `\U+` and four hexadecimal digits. */
function encoded(text: string): Uint8Array {
  const within = text
    .toWellFormed()
    .replace(
      /[^\n\x20-\x7e\xa0-\xff]/g,
      (unit) => `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`,
    );
  return Uint8Array.from(within, (character) => character.charCodeAt(0));
}
