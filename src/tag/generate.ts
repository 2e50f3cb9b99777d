/** The generators: what a shape is before its modifiers. */

import { translation } from '../geometry/affine.ts';
import { union } from '../geometry/clipper.ts';
import { boundsOf } from '../geometry/measure.ts';
import { strokeMm } from '../geometry/strokes.ts';
import type { Region } from '../geometry/types.ts';
import type { Shape } from '../spec/model/shape-model.ts';
import { around, aroundTogether } from './shapes/around.ts';
import type { AroundOptions } from './shapes/around.ts';
import { betweenLines } from './lettering/between-lines.ts';
import { borderOf } from './shapes/border.ts';
import type { Stage } from './cache.ts';
import { codeOf, encode } from './shapes/code.ts';
import type { Code } from './shapes/code.ts';
import type { Lettering } from './lettering/letters.ts';
import { drawnOutline, openOutline, polygonOutline } from './curve-outline.ts';
import type { CurveOutline } from './curve-outline.ts';
import { differenceOf, grownByBeam, intersectionOf, unionOf } from './open-lines.ts';
import type { Drawn } from './open-lines.ts';
import { makePlate } from './shapes/plates.ts';
import { copiesOf } from './shapes/repeat.ts';
import { bareLinesFinding, bareLinesIn } from './drawing/left-out.ts';
import type { Resources } from './resources.ts';
import type { MadeShape } from './made-shape.ts';
import { makeStack } from './shapes/stack.ts';
import { stickOf } from './shapes/stick.ts';
import { parseSvgPath } from './drawing/svg-path.ts';
import { lettering, lines } from './lettering/generate-lettering.ts';

/** Makes the shapes that a shape is made from. */
export type MakeShape = (shape: Shape) => Promise<Stage<MadeShape>>;

/** `undefined` if a file is missing or a path is faulty, which has then been reported. */
export async function generate(
  shape: Shape,
  resources: Resources,
  make: MakeShape,
): Promise<Stage<CurveOutline> | undefined> {
  const { cache } = resources;
  const { generator } = shape;
  switch (generator.kind) {
    case 'text':
    case 'strokes':
      return lettering(shape, generator, resources);
    case 'lines':
      return lines(shape, generator, resources);
    case 'rectangle':
    case 'ellipse':
    case 'regular':
    case 'points':
    case 'arrow':
    case 'oval':
    case 'heart':
    case 'house':
    case 'label':
    case 'ticket':
    case 'scalloped-rectangle':
    case 'scalloped-disc':
      return cache.get('plate', generator, () => polygonOutline({ region: makePlate(generator) }));
    case 'code': {
      const encoded = cache.get('code', [generator.text, generator.correction], () => encode(generator));
      const { value } = encoded;
      if ('problem' in value) {
        const path = [...shape.path, 'code'];
        resources.report({ code: 'bad-value', severity: 'error', path, message: value.problem });
        return undefined;
      }
      return cache.get('modules', [encoded.id, generator.size], () => polygonOutline(codeOf(value.matrix, generator)));
    }
    case 'path': {
      const parsed = cache.get('path', generator, () => parseSvgPath(generator.data, generator.mmPerUnit));
      const { value } = parsed;
      if ('curves' in value && generator.asLines)
        return cache.get('drawn lines', parsed.id, () => openOutline(value.curves));
      if ('curves' in value) {
        const bare = cache.get('bare lines', parsed.id, () => bareLinesIn(value.curves)).value;
        if (bare > 0) resources.report(bareLinesFinding(bare, [...shape.path, 'path']));
        return cache.get('drawn path', parsed.id, () => drawnOutline([{ curves: value.curves, rule: 'nonzero' }]));
      }
      const message = `This is not valid SVG path data: ${value.problem}.`;
      resources.report({ code: 'bad-value', severity: 'error', path: [...shape.path, 'path'], message });
      return undefined;
    }
    case 'drawing': {
      const drawing = resources.drawing(generator.file);
      if (drawing && generator.asLines)
        return cache.get('lines of drawing', drawing.id, () => openOutline(drawing.lines.flat()));
      return drawing && cache.get('drawing', drawing.id, () => drawnOutline(drawing.shapes));
    }
    case 'from': {
      const made = await make(generator.shape);
      return cache.get('from', made.id, () => polygonOutline(made.value));
    }
    case 'around': {
      const made = await make(generator.shape);
      const { by, corners, keepHoles, bays, together } = generator;
      const turned = together ? turnOfLines(generator.shape) : undefined;
      return cache.get('around', [made.id, by, corners, keepHoles, bays, together, turned], () => {
        const between = turned === undefined ? [] : betweenLines(made.value.lettering ?? [], turned);
        return polygonOutline({ region: aroundShape(made.value, between, generator, together) });
      });
    }
    case 'border': {
      const { shape, ...how } = generator;
      const made = await make(shape);
      return cache.get('border', [made.id, how], () => polygonOutline(borderOf(made.value.region, generator)));
    }
    case 'stick': {
      const { shape: carried, ...stick } = generator;
      const made = await make(carried);
      return cache.get('stick', [made.id, stick], () => polygonOutline({ region: stickOf(made.value, stick) }));
    }
    case 'repeat': {
      const [repeatedShape, outline] = generator.shapes;
      const made = await make(repeatedShape);
      const line = outline && (await make(outline));
      const { along } = generator;
      const repeated = cache.get('repeat', [made.id, line?.id, along], () =>
        copiesOf(made.value, along, line?.value.region),
      );
      const copies = repeated.value;
      if ('problem' in copies) {
        resources.report({
          code: 'bad-value',
          severity: 'error',
          path: [...shape.path, 'repeat'],
          message: copies.problem,
        });
        return undefined;
      }
      return cache.get('repeated', repeated.id, () => {
        const lettering = copies.made.flatMap(letteringWithin);
        const codes = copies.made.flatMap((each) => codesWithin(each, false));
        const asked = copies.made.flatMap((each) => each.asked ?? []);
        return polygonOutline({
          ...unionOf(copies.made),
          asked,
          ...(codes.length > 0 ? { codes } : {}),
          ...withLettering(lettering),
        });
      });
    }
    case 'stack': {
      const members: { name: string; made: Stage<MadeShape> }[] = [];
      for (const member of generator.shapes) members.push({ name: member.name!, made: await make(member) });
      const inputs = [members.map(({ name, made }) => [name, made.id]), generator.towards, generator.lap];
      return cache.get('stack', inputs, () => {
        const parts = members.map(({ name, made }) => ({ name, shape: made.value }));
        const stack = makeStack(parts, generator.towards, generator.lap);
        const lettering = members.flatMap(({ name, made }) => stackedLettering(made.value, stack.parts?.get(name)));
        return polygonOutline({ ...stack, ...withLettering(lettering) });
      });
    }
    case 'union':
    case 'difference':
    case 'intersection': {
      const made: Stage<MadeShape>[] = [];
      for (const each of generator.shapes) made.push(await make(each));
      const inputs = made.map(({ id }) => id);
      const { kind } = generator;
      return cache.get(kind, inputs, () => {
        const lettering = made.flatMap(({ value }, index) =>
          letteringWithin(value).map((each) => (kind === 'difference' && index > 0 ? each.cutOut() : each)),
        );
        const asked = made.flatMap(({ value }) => value.asked ?? []);
        const codes =
          kind === 'intersection'
            ? []
            : made.flatMap(({ value }, index) => codesWithin(value, kind === 'difference' && index > 0));
        // Shapes that are cut out are no longer part of the result.
        const kept = kind === 'difference' ? made.slice(0, 1) : made;
        const parts = new Map(kept.flatMap(({ value }) => [...(value.parts ?? [])]));
        return polygonOutline({
          ...combined(
            kind,
            made.map(({ value }) => value),
          ),
          asked,
          ...(codes.length > 0 ? { codes } : {}),
          ...(parts.size > 0 ? { parts } : {}),
          ...withLettering(lettering),
        });
      });
    }
  }
}

/** The lettering of a shape that becomes a member of another. */
function letteringWithin({ region, lettering = [] }: MadeShape): readonly Lettering[] {
  return lettering.map((each) => each.within(region));
}

/** The codes of a shape that becomes a member of another; if it is cut out, its dark modules become light. */
function codesWithin({ codes = [] }: MadeShape, isCutOut: boolean): Code[] {
  return codes.map((code) => (isCutOut ? { ...code, isLight: !code.isLight } : code));
}

/** The lettering of a shape at the place where a stack has put it. */
function stackedLettering(made: MadeShape, placed: Region | undefined): readonly Lettering[] {
  const from = boundsOf(made.region);
  const to = placed && boundsOf(placed);
  if (!from || !to) return [];
  const shift = translation(to.minX - from.minX, to.minY - from.minY);
  return letteringWithin(made).map((each) => each.mapped(shift));
}

function withLettering(lettering: readonly Lettering[]): Pick<MadeShape, 'lettering'> {
  return lettering.length > 0 ? { lettering } : {};
}

/** How far straight lines of lettering are turned, in degrees clockwise; `undefined` for all else. */
function turnOfLines({ generator, modifiers: { rotate = 0 } }: Shape): number | undefined {
  const isStraight =
    generator.kind === 'lines' ? !generator.lines.some(({ arc }) => arc) : generator.kind === 'text' && !generator.arc;
  return isStraight ? rotate : undefined;
}

/** Of lines to draw along, it is a band with round ends along them; `between` is closed as well. */
function aroundShape(made: MadeShape, between: Region, way: AroundOptions, together: boolean): Region {
  const outline = together ? aroundTogether : around;
  const region = made.lines ? grownByBeam(made) : made.region;
  return outline(between.length > 0 ? union([region, between]) : region, {
    ...way,
    by: made.lines ? way.by - strokeMm / 2 : way.by,
  });
}

function combined(kind: 'union' | 'difference' | 'intersection', shapes: readonly MadeShape[]): Drawn {
  if (kind === 'union') return unionOf(shapes);
  return kind === 'difference' ? differenceOf(shapes) : intersectionOf(shapes);
}
