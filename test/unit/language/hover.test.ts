import assert from 'node:assert/strict';
import { fontNotes } from '../../../src/language/completion/fonts.ts';
import { hoverAt } from '../../../src/language/hover/hover.ts';
import { pictureOf } from '../../../src/language/hover/picture.ts';
import { signatureAt } from '../../../src/language/completion/signature.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import { report } from '../support/engine.ts';
import { marked, samples } from './marked.ts';

const spec = `tagwright: 1
units: mm
stock: {material: birch plywood, thickness: 3 mm}
tie: {twine: 2 mm}
shapes:
  disc: {ellipse: 30 mm}
  plate:
    rectangle: [80 mm, 1 1/2 in]
    grow: 0.5 mm
    corners: miter
pieces:
  tag: {title: "A *tag*", body: [plate], hanger: {hole: {at: top}}, engrave: [disc, {from: disc, font: x}]}
`;

/** What is told where the word first stands, without what escapes its signs. */
async function hoverText(word: string, text = spec): Promise<string> {
  const made = await report(text.replace(', font: x', ''));
  const hover = hoverAt(new SpecSource(text), text.indexOf(word) + 1, made, fontNotes());
  return (hover?.markdown ?? '').replaceAll(/\\(.)/g, '$1');
}

describe('Hovering', () => {
  it('over a key tells what it does, its kind, its default and an example', async () => {
    const corners = await hoverText('corners:');
    assert.match(corners, /\*\*corners\*\* – round \| miter \| bevel/);
    assert.match(corners, /How corners are made/);
    assert.match(corners, /Default: `round`/);
    assert.match(await hoverText('grow:'), /A length: a number with its unit/);
    assert.match(await hoverText('grow:'), /Example: `grow: 0.5 mm`/);
  });

  it('over a length tells it in both units', async () => {
    // 1 in = 25.4 mm exactly (CSS Values and Units).
    assert.match(await hoverText('1 1/2 in'), /1 1\/2 in = 38\.1 mm = 1\.5 in/);
    assert.match(await hoverText('30 mm'), /^30 mm = 1\.181 in$/);
    const inches = spec.replace('units: mm', 'units: in').replace('[80 mm,', '[3,');
    assert.match(await hoverText('3,', inches.replace('thickness: 3 mm', 'thickness: 2 mm')), /^3 in = 76\.2 mm$/);
  });

  it('over a shape, where it is given and where it is used, tells its finished size', async () => {
    for (const place of ['disc: {', 'disc, {'])
      assert.match(await hoverText(place), /disc[^]*30\.0 × 30\.0 mm \(1\.181 × 1\.181 in\)/);
    // 80 mm and 1.5 in, half a millimetre more on every side.
    assert.match(await hoverText('plate:'), /81\.0 × 39\.1 mm/);
  });

  it('over a piece tells size, area, parts, and what its hanger bears', async () => {
    const piece = await hoverText('tag: {');
    assert.match(piece, /\*\*A \*tag\*\*\* – piece/);
    assert.match(piece, /1 part, 1 hole/);
    assert.match(piece, /Load \(estimate\)\.\*\* Bears [^]*Handbook of Finnish Plywood \(2002\)/);
    assert.match(piece, /\[How it is worked out\]\(command:tagwright\.openGuide\?%5B%22what-a-hanger-bears%22%5D\)$/);
    const unknown = await hoverText('tag: {', spec.replace('birch plywood', 'poplar plywood'));
    assert.match(unknown, /Load unknown: no strength of poplar plywood is known here\./);
    assert.doesNotMatch(unknown, /estimate/i, 'where nothing is known, there is none');
    assert.match(
      await hoverText('tag: {', spec.replace('birch plywood', 'walnut')),
      /Load \(estimate\)\.\*\* Bears [^]*An estimate/,
    );
    assert.match(await hoverText('hole:'), /A round hole inside the body[^]*Load/);
    // 81 × 39.1 mm less a hole of 4 mm, twice the twine.
    const area = Number(/([\d.]+) cm²/.exec(piece)![1]);
    assert.ok(Math.abs(area - (81 * 39.1 - Math.PI * 4) / 100) < 0.1, String(area));
  });

  it('over a font tells where it is from', async () => {
    const text = spec.replace('ellipse: 30 mm', 'text: a, font: nunito, width: 9 mm');
    assert.match(await hoverText('nunito', text), /Nunito[^]*bundled, SIL Open Font License; weights 600, 700, 800/);
  });

  it('over a comment, a space or a text tells nothing', async () => {
    assert.equal(await hoverText('  grow:'), '');
    assert.equal(hoverAt(new SpecSource('# units: mm\n'), 3, undefined, []), undefined);
    assert.equal(hoverAt(new SpecSource(''), 0, undefined, []), undefined);
  });

  it('never fails, at any offset, in whole and in half-typed specs', () => {
    for (const { text } of samples) {
      const source = new SpecSource(text);
      let count = 0;
      for (let offset = 0; offset <= text.length; offset++) if (hoverAt(source, offset, undefined, [])) count++;
      assert.ok(count > text.length / 4);
      for (let length = 0; length < text.length; length += 5)
        hoverAt(new SpecSource(text.slice(0, length)), length, undefined, []);
    }
  });
});

describe('A picture of a shape', () => {
  const square = [
    [
      { x: 0, y: 0 },
      { x: 40, y: 0 },
      { x: 40, y: 10 },
      { x: 0, y: 10 },
    ],
  ];

  it('is an SVG image as large as will go into its room, its proportions kept', () => {
    const { uri, size } = pictureOf(square, { width: 84, height: 84 })!;
    assert.deepEqual(size, { width: 84, height: 24 });
    const svg = decodeURIComponent(uri.slice('data:image/svg+xml,'.length));
    assert.match(svg, /^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" width="84" height="24">/);
    for (const corner of ['2.0 2.0', '82.0 2.0', '82.0 22.0', '2.0 22.0']) assert.ok(svg.includes(corner), svg);
  });

  it('can be seen on white and on black: at least 3 to 1 by the formula of WCAG 2.1', () => {
    const svg = decodeURIComponent(pictureOf(square, { width: 84, height: 84 })!.uri);
    const hex = /fill="#(\w{6})"/.exec(svg)![1]!;
    const luminance = (colour: string) => {
      const [r, g, b] = [0, 2, 4].map((at) => {
        const c = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
        return c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
    };
    for (const ground of ['ffffff', '000000', '1e1e1e', '1f1f1f']) {
      const [light, dark] = [luminance(ground), luminance(hex)].sort((a, b) => b - a);
      assert.ok((light! + 0.05) / (dark! + 0.05) >= 3, ground);
    }
  });

  it('is none of nothing', () => {
    assert.equal(pictureOf([], { width: 84, height: 84 }), undefined);
  });
});

describe('Help inside lists', () => {
  const help = (text: string) => {
    const { text: plain, offset } = marked(text);
    const found = signatureAt(plain, offset);
    return found && [found.label, found.label.slice(...found.parameters[found.active]!)];
  };

  it('names the figures of a size and shows which one comes', () => {
    assert.deepEqual(help('shapes:\n  a: {rectangle: [^]}\n'), ['rectangle: [width, height]', 'width']);
    assert.deepEqual(help('shapes:\n  a: {rectangle: [80 mm, ^]}\n'), ['rectangle: [width, height]', 'height']);
    assert.deepEqual(help('shapes:\n  a: {ellipse: [80 mm, 3^\n'), ['ellipse: [width, height]', 'height']);
    assert.deepEqual(help('sheet: {size: [600 mm^, 400 mm]}\n'), ['size: [width, height]', 'width']);
    assert.deepEqual(help('shapes:\n  a: {polygon: {points: [[0, 0], [3, ^\n'), ['points: [right, down]', 'down']);
  });

  it('is silent elsewhere', () => {
    assert.equal(help('shapes:\n  a: {rectangle: ^[80 mm, 3 mm]}\n'), undefined);
    assert.equal(help('pieces:\n  t: {body: [^]}\n'), undefined);
  });
});

describe('Hovering over where a shape is put', () => {
  it('tells how far off the middle it is by each rule', async () => {
    // Exact: the box of this triangle is centred on the plate, its centroid lies a third from its left side: 30/3 − 30/2 = −5.
    const text = `tagwright: 1
shapes:
  plate: {rectangle: [60, 40]}
  drop: {path: "M0 0 L30 10 L0 20 Z", place: {on: plate, by: box}}
pieces:
  tag: {body: [plate], engrave: [drop]}
`;
    const made = await report(text);
    for (const word of ['place:', 'by:']) {
      const { markdown } = hoverAt(made.source, text.indexOf(word), made, [])!;
      assert.match(markdown, /`box`, by the ruler: in the middle/);
      assert.match(markdown, /`mass`, by weight: 5(\.0+)? mm left/);
      assert.match(markdown, /`eye`, to the eye: 2\.50? mm left/);
    }
    assert.doesNotMatch(hoverAt(made.source, text.indexOf('rectangle'), made, [])!.markdown, /middle/);
  });
});
