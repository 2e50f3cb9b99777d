/** What the host would send of a spec: its drawing, and what is measured on it. */

import { loadsOf } from '../../src/scene/loads.ts';
import { cutPathsOf, wallsOf } from '../../src/scene/measures.ts';
import { gripsOf, sceneGrips } from '../../src/scene/grips.ts';
import { pieceScales } from '../../src/scene/piece-scale.ts';
import { pinsOf } from '../../src/scene/pins.ts';
import { sceneOf } from '../../src/scene/scene.ts';
import type { MeasuresMessage, SceneMessage } from '../../src/protocol/preview.ts';
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
