/** The specs that ship. */

import { readdirSync, readFileSync } from 'node:fs';

const folder = new URL('../../../samples/', import.meta.url);

export const samples = readdirSync(folder)
  .filter((name) => name.endsWith('.tag.yaml'))
  .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));
