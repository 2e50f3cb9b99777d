import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { jobSample, jobSampleFiles } from '../../../src/vscode/samples/job-sample-files.ts';

describe('The sample that is a job', () => {
  it('is copied with all the files of its folder', () => {
    const folder = join(import.meta.dirname, '..', '..', '..', 'samples', jobSample.folder);
    assert.deepEqual([...jobSampleFiles].sort(), readdirSync(folder).sort());
    for (const file of [jobSample.fileName, jobSample.pictured]) assert.ok(jobSampleFiles.includes(file));
  });
});
