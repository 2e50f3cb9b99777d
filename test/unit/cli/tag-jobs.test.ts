import assert from 'node:assert/strict';
import { TagJobs } from '../../../src/cli/tag-jobs.ts';
import { newEngine } from '../support/engine.ts';

const text =
  'tagwright: 1\nbatch: [Rue, Dill, Ivy]\ntitle: "Bed of {name}"\nshapes:\n  plate: {rectangle: [60, 20]}\n  word: {text: "{name}", font: Nunito, height: 6}\npieces:\n  tag: {body: [plate], engrave: [word], hanger: {hole: {at: left, diameter: 3}}}\n';

describe('The files of a batch', () => {
  it('come with one proof, and each tag is computed once', async () => {
    const engine = newEngine();
    const rows: (number | undefined)[] = [];
    const compute = engine.compute.bind(engine);
    engine.compute = (spec, options) => {
      rows.push(options.row);
      return compute(spec, options);
    };
    const made: string[] = [];
    const spec = { file: 'beds.tag.yaml', text, options: { locate: () => undefined } };
    for await (const files of new TagJobs(engine, false).files(spec, ['svg', 'proof'], undefined))
      made.push(...Object.keys(files));
    assert.deepEqual(made, ['beds-rue.svg', 'beds-dill.svg', 'beds-ivy.svg', 'beds-proof.pdf']);
    assert.deepEqual(rows, [0, 1, 2]);
  });
});
