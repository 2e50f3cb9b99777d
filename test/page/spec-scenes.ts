/** What the host would send of a spec: its drawing, and what is measured on it. */

import { loadsOf } from '../../src/preview/loads.ts';
import { cutPathsOf, wallsOf } from '../../src/preview/measures.ts';
import { gripsOf, sceneGrips } from '../../src/preview/grips.ts';
import { pieceScales } from '../../src/preview/piece-scale.ts';
import { pinsOf, sceneOf } from '../../src/preview/scene.ts';
import type { MeasuresMessage, SceneMessage } from '../../src/preview/protocol.ts';
import { report } from '../unit/support/engine.ts';
import { source } from './scenes.ts';

export interface SpecMessages {
  readonly scene: SceneMessage;
  readonly measures: MeasuresMessage;
}

/** Of a spec that makes a tag. */
export async function messagesOf(text: string, version = 1): Promise<SpecMessages> {
  const { tag, model, issues, source: spec } = await report(text);
  if (!tag || !model) throw new Error(issues.map(({ message }) => message).join('\n'));
  const lineOf = (offset: number): number => spec.position(offset).line;
  const scales = pieceScales(tag, model);
  const grips = sceneGrips(gripsOf(model, spec, (piece) => scales.get(piece) ?? 1));
  return {
    scene: {
      type: 'scene',
      source,
      version,
      fileName: 'sorrel.tag.yaml',
      scene: sceneOf(tag, (path) => spec.range(path).start, grips),
      stale: false,
      pins: pinsOf(issues, lineOf),
      accepted: [],
    },
    measures: {
      type: 'measures',
      source,
      version,
      loads: loadsOf(tag),
      walls: wallsOf(tag, issues),
      cutPaths: cutPathsOf(tag),
    },
  };
}
