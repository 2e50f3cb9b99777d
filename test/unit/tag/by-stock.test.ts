import assert from 'node:assert/strict';
import { sheetJobs } from '../../../src/export/sheets/sheet-job.ts';
import { filesIn } from '../../../src/export/formats.ts';
import { jobOf } from '../../../src/export/job/job.ts';
import { estimateOfTag } from '../../../src/export/job/known-estimates.ts';
import { proofFacts } from '../../../src/export/proof/proof-facts.ts';
import { sceneOf } from '../../../src/scene/scene.ts';
import { byStock } from '../../../src/tag/by-stock.ts';
import { assertNear, make, newEngine, placeOf, report } from '../support/engine.ts';
import { never } from '../support/sheets.ts';
import { pathsOf, ringsOf } from '../support/svg-reader.ts';
import { tools } from '../support/tools.ts';
import { area } from '../support/clipper2.ts';

const workshop = `tagwright: 1
stocks:
  ply3: {material: birch plywood, thickness: 3 mm, kerf: 0.2 mm, density: 700, price: {amount: 20, per: m2, currency: EUR}, machine: {cut: 10 mm/s}}
  cherry2: {material: cherry, thickness: 2 mm, kerf: 0.1 mm, density: 600, price: {amount: 50, per: m2, currency: EUR}, machine: {cut: 20 mm/s}}
`;

const layered = `tagwright: 1
use: seed.workshop.yaml
stock: ply3
sheet: {size: [200 mm, 100 mm]}
shapes:
  plate: {rectangle: [60 mm, 50 mm]}
  bean: {ellipse: [30 mm, 20 mm]}
pieces:
  back: {body: [plate], hanger: {hole: {diameter: 4 mm, inset: 6 mm}}}
  front: {body: [bean], glue_to: back, stock: cherry2}
`;

const engine = newEngine({ 'seed.workshop.yaml': workshop });

describe('a piece of its own stock', () => {
  it('is cut with the kerf of that stock, in a file of its own', async () => {
    const made = await make(layered, engine);
    assert.deepEqual(made.issues, []);
    const job = jobOf(made.report)!;
    const files = await filesIn('svg', job, 'bean', tools);
    assert.deepEqual(Object.keys(files), ['bean-ply3.svg', 'bean-cherry2.svg']);
    const areas = Object.values(files).map((svg) =>
      ringsOf(pathsOf(svg as string, 'cut-outer')).reduce((sum, ring) => sum + Math.abs(area([ring])), 0),
    );
    // Half a kerf on every side: a rectangle with round corners, and (Steiner) an ellipse and what its outline adds.
    assertNear(areas[0]!, 60.2 * 50.2 - (4 - Math.PI) * 0.01, 0.05, 'plate');
    const outline = Math.PI * (3 * 25 - Math.sqrt((3 * 15 + 10) * (15 + 3 * 10)));
    assertNear(areas[1]!, Math.PI * 15 * 10 + outline * 0.05 + Math.PI * 0.05 ** 2, 0.1, 'bean');
  });

  it('weighs, costs and takes as long as that stock does', async () => {
    const { report: made } = await make(layered, engine);
    const [ply, cherry] = byStock(made.tag!);
    assert.deepEqual([ply!.stock.name, cherry!.stock.name], ['ply3', 'cherry2']);
    const estimate = estimateOfTag(made.tag!)!;
    const hole = Math.PI * 2 ** 2;
    assertNear(estimate.weight!, (60 * 50 - hole) * 3 * 700e-6 + Math.PI * 150 * 2 * 600e-6, 0.01, 'weight');
    assertNear(estimate.cost!.amount, (60.2 * 50.2 * 20 + 30.1 * 20.1 * 50) / 1e6, 0.001, 'cost');
    // Ramanujan's formula for the ellipse, half a kerf outside; the machine's own way of starting and stopping comes on top.
    const [a, b] = [15.05, 10.05];
    const oval = Math.PI * (3 * (a + b) - Math.sqrt((3 * a + b) * (a + 3 * b)));
    const straight = (2 * (60.2 + 50.2) + Math.PI * 3.8) / 10 + oval / 20;
    assert.ok('seconds' in estimate.time);
    assert.ok(
      estimate.time.cut >= straight - 0.05 && estimate.time.cut < straight + 0.5,
      `${estimate.time.cut} s of ${straight}`,
    );
  });

  it('is as thick, and looks as that stock does', async () => {
    const { report: made } = await make(layered, engine);
    const facts = proofFacts(made.tag!);
    assert.match(facts.find(({ name }) => name === 'Size')!.value!, /5 mm thick \(two layers: 3 mm and 2 mm, glued\)/);
    assert.equal(facts.find(({ name }) => name === 'Material')!.value, 'Birch plywood and cherry');
    const scene = sceneOf(made.tag!, () => 0);
    assert.deepEqual(
      scene.pieces.map(({ sheet }) => sheet),
      [undefined, { material: 'cherry', thickness: 2 }],
    );
  });

  it('is laid out on sheets of that stock alone', async () => {
    const { report: made } = await make(layered, engine);
    const sheets = await sheetJobs([made], never);
    assert.ok(!('problem' in sheets));
    const { plan, jobs, facts } = sheets;
    assert.deepEqual(
      plan.sheets.map(({ from, pieces }) => [from.stock.name, ...pieces.map(({ piece }) => piece.id)]),
      [
        ['ply3', 'back'],
        ['cherry2', 'front'],
      ],
    );
    assert.deepEqual(
      jobs.map(({ tag }) => tag.stock.kerf),
      [0.2, 0.1],
    );
    assert.match(jobs[1]!.tag.title, /sheet 2 of 2 \(cherry2\)$/);
    // Two sheets of 0.02 m².
    assert.equal(facts.find(({ name }) => name === 'Whole sheets')!.value, '1.40 EUR');
  });

  it('is judged by that stock', async () => {
    const thin = layered
      .replace('bean: {ellipse: [30 mm, 20 mm]}', 'bean: {path: "M0 0H30V1.6H0Z", width: 30 mm}')
      .replace(', glue_to: back', '');
    const strong = await report(
      thin,
      newEngine({ 'seed.workshop.yaml': workshop.replaceAll('kerf:', 'min_web: 1.5 mm, kerf:') }),
    );
    assert.deepEqual(
      strong.issues.filter(({ piece }) => piece === 'front').map(({ code }) => code),
      [],
    );
    const weak = workshop
      .replace('kerf: 0.2', 'min_web: 1.5 mm, kerf: 0.2')
      .replace('kerf: 0.1', 'min_web: 1.7 mm, kerf: 0.1');
    const found = await report(thin, newEngine({ 'seed.workshop.yaml': weak }));
    assert.deepEqual(
      found.issues.filter(({ piece }) => piece === 'front').map(({ code, minimum }) => [code, minimum]),
      [['thin-stroke', 1.7]],
    );
  });

  it('must be one there is', async () => {
    const found = await report(layered.replace('stock: cherry2', 'stock: chery2'), engine);
    assert.deepEqual(
      found.issues.map((issue) => [issue.code, placeOf(found, issue).text, issue.suggestions]),
      [['unknown-name', 'chery2', ['cherry2']]],
    );
  });

  it('changes nothing where it is the tag’s own', async () => {
    const { report: made } = await make(layered.replace('stock: cherry2', 'stock: ply3'), engine);
    assert.deepEqual(Object.keys(await filesIn('svg', jobOf(made)!, 'bean', tools)), ['bean.svg']);
  });

  it('is told once where something is wrong with it', async () => {
    const faulty = workshop.replace('thickness: 2 mm', 'thickness: -2 mm');
    const two = layered.replace('  front:', '  side: {body: [bean], stock: cherry2}\n  front:');
    const found = await report(two, newEngine({ 'seed.workshop.yaml': faulty }));
    assert.deepEqual(
      found.issues.map(({ code, path }) => [code, ...path]),
      [['bad-length', 'use']],
    );
  });

  it('has the web of that stock round its hanger', async () => {
    const ring = layered
      .replace(', glue_to: back', ', hanger: {ring: {diameter: 4 mm}}')
      .replace(', hanger: {hole: {diameter: 4 mm, inset: 6 mm}}', '');
    const wall = async (web: string) => {
      const text = workshop.replace('kerf: 0.1', `min_web: ${web}, kerf: 0.1`);
      const { report: made } = await make(ring, newEngine({ 'seed.workshop.yaml': text }));
      return made.tag!.pieces[1]!.hangers[0]!.wall;
    };
    assert.deepEqual([await wall('2.2 mm'), await wall('3.1 mm')], [2.2, 3.1]);
  });
});
