/** Jobs as tests make them: of files in memory. */

import { checkJob, layOutJob } from '../../../src/jobs/job.ts';
import type { CheckedJob, LaidOutJob } from '../../../src/jobs/job.ts';
import { newEngine } from './engine.ts';
import type { Beside } from './engine.ts';
import { littleEffort, never } from './sheets.ts';

export const workshop = `tagwright: 1
stocks:
  ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.2 mm, min_web: 1 mm, density: 700, price: {amount: 6, per: m2, currency: EUR}, machine: {cut: 10 mm/s, engrave: 200 mm/s}}
  cherry2: {material: cherry, thickness: 2 mm, kerf: 0.1 mm, min_web: 1 mm, density: 600, price: {amount: 50, per: m2, currency: EUR}, machine: {cut: 20 mm/s}}
sheet: {size: [200 mm, 100 mm], margin: 3 mm, gap: 2 mm}
`;

/** A plate of 60 × 40 mm. */
export const plate = `tagwright: 1
use: shop.workshop.yaml
stock: ply3
shapes: {plate: {rectangle: [60 mm, 40 mm]}}
pieces: {tag: {body: [plate]}}
`;

/** A plate of ply, and one of cherry on it. */
export const layered = `tagwright: 1
use: shop.workshop.yaml
stock: ply3
shapes: {plate: {rectangle: [60 mm, 40 mm]}, bean: {rectangle: [30 mm, 20 mm]}}
pieces: {back: {body: [plate]}, front: {body: [bean], glue_to: back, stock: cherry2}}
`;

/** As wide as its order says, with a name that is engraved. */
export const named = `tagwright: 1
use: shop.workshop.yaml
stock: ply3
shapes: {plate: {rectangle: [50 mm, 20 mm]}, name: {text: "{name}", font: Nunito, height: 3 mm}}
pieces: {tag: {body: [plate], engrave: [name]}}
`;

export const files: Beside = {
  'shop.workshop.yaml': workshop,
  'plate.tag.yaml': plate,
  'layered.tag.yaml': layered,
  'named.tag.yaml': named,
};

export function checkedJob(text: string, beside: Beside = files, name = 'swap.job.yaml'): Promise<CheckedJob> {
  const engine = newEngine(beside);
  const locate = (relative: string) => `/specs/${relative}`;
  return checkJob(text, name, { engine, locate, optionsFor: () => ({ locate }), checkpoint: never });
}

export async function laidOutJob(text: string, beside: Beside = files, name = 'swap.job.yaml'): Promise<LaidOutJob> {
  const laid = await layOutJob(await checkedJob(text, beside, name), { checkpoint: never, effort: littleEffort });
  if (!laid) throw new Error('Nothing is laid out.');
  return laid;
}

export function jobOf(tags: readonly string[], sheets: readonly string[], more: readonly string[] = []): string {
  return [
    'tagwright_job: 1',
    'use: shop.workshop.yaml',
    ...more,
    'tags:',
    ...tags.map((line) => `  - ${line}`),
    'sheets:',
    ...sheets.map((line) => `  ${line}`),
    '',
  ].join('\n');
}
