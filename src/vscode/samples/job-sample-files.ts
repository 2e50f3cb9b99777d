/** The files in `samples/` that form the sample job. */

export const jobSample = {
  folder: 'plant-swap',
  fileName: 'swap.job.yaml',
  title: 'Plant swap, a job',
  purpose: 'Labels for a table of orders and two signs, cut together from the sheets and offcuts there are. Copied into a folder of yours.',
  /** One of its specs, drawn as its picture. */
  pictured: 'table-sign.tag.yaml',
} as const;

/** All of its files; folders of an extension loaded over HTTP cannot be listed. */
export const jobSampleFiles = [
  jobSample.fileName,
  jobSample.pictured,
  'orders.csv',
  'ply3.offcuts.yaml',
  'pot-label.tag.yaml',
  'seed-library.workshop.yaml',
] as const;
