/**
 * A tag as a DXF drawing of the 2000 format (AC1015), in millimetres: a layer an operation, each outline one closed polyline
 * of lines and arcs, in working order. The only file that knows @tarikjabiri/dxf.
 */

import type * as Dxf from '@tarikjabiri/dxf';
import { withArcsOnly } from '../geometry/biarcs.ts';
import { startsOf } from '../geometry/contour.ts';
import type { Contour } from '../geometry/contour.ts';
import { channels } from './channels.ts';
import { errorNote, kerfNote } from './job.ts';
import type { Job } from './job.ts';
import { styleOf } from './styles.ts';

/** The newest of the plain formats: what came later, fewer programs read. */
const version = 'AC1015';

export async function toDxf(job: Job): Promise<string> {
  const { tag, plan } = job;
  const library = await import('@tarikjabiri/dxf');
  const dxf = new library.DxfWriter();
  const { header, tables } = dxf;
  // What the library writes of later formats goes: the name of a program, and a view with styles.
  header.variables.splice(
    header.variables.findIndex(({ name }) => name === '$LASTSAVEDBY'),
    1,
  );
  tables.vPortTable.records.length = 0;
  dxf.setVariable('$ACADVER', { 1: version });
  dxf.setVariable('$DWGCODEPAGE', { 3: 'ANSI_1252' });
  dxf.setUnits(library.Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  dxf.setVariable('$EXTMIN', { 10: 0, 20: 0, 30: 0 });
  dxf.setVariable('$EXTMAX', { 10: round(plan.bounds.maxX, 4), 20: round(plan.bounds.maxY, 4), 30: 0 });
  for (const { operation, paths } of plan.steps) {
    const { layer, color } = styleOf(tag, operation);
    const name = plain(layer);
    if (!tables.layerTable.exist(name)) dxf.addLayer(name, nearestIndex(color, library), 'Continuous');
    for (const contour of paths.flatMap(({ contours }) => contours)) addPolyline(dxf, contour, name, library);
  }
  const notes = [errorNote(job), tag.title, 'Lengths in mm.', kerfNote(tag)];
  const comments = notes.flatMap((note) => (note === undefined ? [] : ['999', ascii(note)]));
  return [...comments, dxf.stringify(), ''].join('\n');
}

function addPolyline(dxf: Dxf.DxfWriter, fitted: Contour, layerName: string, { LWPolylineFlags }: typeof Dxf): void {
  const contour = withArcsOnly(fitted);
  const starts = startsOf(contour);
  const vertices = contour.segments.map((segment, i) => ({
    point: at(starts[i]!),
    // tan(θ/4), counter-clockwise positive; nothing for a line.
    ...(segment.type === 'arc' ? { bulge: round(Math.tan(segment.sweep / 4), 8) } : {}),
  }));
  if (!contour.closed) vertices.push({ point: at(contour.segments.at(-1)!.to) });
  dxf.addLWPolyline(vertices, { layerName, flags: contour.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None });
}

function at({ x, y }: { readonly x: number; readonly y: number }): { x: number; y: number } {
  return { x: round(x, 5), y: round(y, 5) };
}

function round(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0;
}

/** Of the 255 colours the format has, the one nearest to #RRGGBB. */
function nearestIndex(color: string, { aciHex }: typeof Dxf): number {
  const wanted = channels(color);
  const indices = Array.from({ length: 255 }, (_, i) => i + 1);
  const away = (index: number): number =>
    channels(aciHex(index)).reduce((sum, value, i) => sum + (value - wanted[i]!) ** 2, 0);
  return indices.reduce((best, index) => (away(index) < away(best) ? index : best));
}

/** The name of a layer in letters that the library leaves as they are wherever it writes it. */
function plain(layer: string): string {
  return layer
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/ß/g, 'ss')
    .replace(/[^\x20-\x7e]/g, '_');
}

/** The format's own way to write other characters; a line break would end the value. */
function ascii(text: string): string {
  return text
    .toWellFormed()
    .replace(/\s+/g, ' ')
    .replace(/[^\x20-\x7e]/g, (unit) => `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`);
}
