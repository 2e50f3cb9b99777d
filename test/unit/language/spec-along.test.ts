import assert from 'node:assert/strict';
import { jobOf } from '../../../src/export/job/job.ts';
import type { Along } from '../../../src/export/job/job.ts';
import { toSvg } from '../../../src/export/svg.ts';
import { withSpec } from '../../../src/language/along/spec-along.ts';
import { SpecSource } from '../../../src/spec/yaml/source.ts';
import type { Report } from '../../../src/engine/engine.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { withFsType } from '../../fonts/fs-type.ts';
import { newEngine, report } from '../support/engine.ts';
import type { Beside } from '../support/engine.ts';
import { samples } from '../support/samples.ts';

const locate = (relative: string) => `/specs/${relative}`;

/** What goes along with one tag of a spec, and the cut file of that tag. */
async function alongOf(text: string, row: number, beside: Beside = {}): Promise<{ along: Along; svg: string }> {
  const engine = newEngine(beside);
  const made: Report = await engine.compute(text, { locate, row });
  const job = jobOf(made);
  assert.ok(job, made.issues.map(({ message }) => message).join('\n'));
  const { fonts, read } = engine;
  const { along } = await withSpec(job, made, { fonts, read, locate });
  return { along: along!, svg: toSvg(job) };
}

/** The cut file that the packed spec makes with nothing beside it but what is packed. */
async function svgAgain({ text, files }: Along): Promise<string> {
  const made = await report(text!, newEngine(files));
  assert.deepEqual(
    made.issues.filter(({ severity }) => severity === 'error'),
    [],
  );
  return toSvg(jobOf(made)!);
}

const guests = `# For Mrs Nettle, paid.
tagwright: 1
title: Place card, {name}
stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}
tie: {twine: 2 mm}
batch:
  - {name: Sorrel, table: 3, width: 60}
  # - {name: Nettle, table: 4, width: 60}
  - {name: Borage, table: "", width: 70}
shapes:
  plate: {rectangle: ["{width}", 30]}
  name:
    lines:
      - {text: "{name}", font: Pacifico}
      - {text: "table {table}", font: Nunito, optional: true}
    fit: {in: plate, margin: 3, clear: 3}
pieces:
  card: {title: "{name}'s card", body: [plate], engrave: [name], hanger: {hole: {on: plate, at: left}}}
`;

describe('The spec in a pack', () => {
  it('is that of its tag alone: no batch, no other names, no comments', async () => {
    const { along, svg } = await alongOf(guests, 1);
    assert.doesNotMatch(along.text!, /batch|Sorrel|Nettle|table|\{name\}/);
    assert.match(along.text!, /^tagwright: 1\ntitle: "Place card, Borage"\n/);
    assert.match(along.text!, /plate: \{rectangle: \[70, 30\]\}/);
    assert.equal(await svgAgain(along), svg);
    const first = await alongOf(guests, 0);
    assert.match(first.along.text!, /table 3/);
    assert.equal(await svgAgain(first.along), first.svg);
  });

  for (const { name, text } of samples.filter((sample) => /^batch:/m.test(sample.text) && /10-/.test(sample.name)))
    it(`makes the same tags of ${name} again, each from its own`, async () => {
      for (const row of [0, 3]) {
        const { along, svg } = await alongOf(text, row);
        assert.equal(await svgAgain(along), svg);
      }
    });

  const onLine = `tagwright: 1
stock: {material: birch plywood, thickness: 3 mm, kerf: 0.16 mm}
batch:
  - {name: Vero, kind: ""}
  - {name: Ångström, kind: leek}
  - {name: Joy, kind: "No. 7"}
shapes:
  plate: {rectangle: [70, 36], radius: 4}
  name: {text: "{name}", font: Nunito, align: baseline, fit: {in: plate, margin: 3, at_most: {x_height: 5}}}
  kinds:
    lines: ["{kind}", {text: "for {name}", font: Alfa Slab One, share: 1.5}, {text: seeds, font: single line}]
    align: baseline
    x_height: 2
    place: {on: plate, at: bottom, margin: 2}
pieces:
  tag: {body: [plate], engrave: [name, kinds]}
`;

  it('stands on the line of its batch, byte for byte, and tells none of the other names', async () => {
    const optional = onLine.replace('["{kind}"', '[{text: "{kind}", optional: true}');
    for (const row of [0, 2]) {
      const { along, svg } = await alongOf(optional, row);
      assert.ok((await svgAgain(along)) === svg, `row ${row}`);
      const rooms = [...along.text!.matchAll(/room_for: \{letters: "?([^",}]*)/g)].map(([, letters]) => letters!);
      assert.equal(rooms.length, row === 0 ? 3 : 4);
      for (const letters of rooms) assert.ok(Array.from(letters).length <= 4, letters);
    }
    // It would stand elsewhere by itself.
    const { along, svg } = await alongOf(optional, 0);
    const alone = { ...along, text: along.text!.replaceAll(/,? *room_for: \{[^}]*\}/g, '') };
    assert.notEqual(await svgAgain(alone), svg);
  });

  it('keeps the size that all tags of the batch share', async () => {
    const text = `tagwright: 1
stock: {material: oak, thickness: 3 mm, kerf: 0.1 mm}
batch: [Ivy, Marjoram]
shapes:
  plate: {rectangle: [60, 20]}
  name: {text: "{name}", font: Pacifico, fit: {in: plate, margin: 2, same_size: true}}
pieces:
  tag: {body: [plate], engrave: [name]}
`;
    const { along, svg } = await alongOf(text, 0);
    assert.match(along.text!, /at_most: \{width: [\d.]+ mm\}/);
    const widthIn = (file: string) => {
      const xs = [.../id="engrave"[\s\S]*?<\/g>/.exec(file)![0].matchAll(/[ML]([\d.]+) /g)].map(([, x]) => Number(x));
      return Math.max(...xs) - Math.min(...xs);
    };
    assert.ok(Math.abs(widthIn(await svgAgain(along)) - widthIn(svg)) < 0.01, 'promised to 0.01 mm');
    assert.ok(widthIn(svg) < 30, 'by itself, it would fill the plate');
  });

  it('says nothing of the workshop: what sheets cost, how fast and on what it cuts', async () => {
    const shop = `tagwright: 1
stocks:
  oak3:
    material: oak
    thickness: 3 mm
    kerf: 0.1 mm
    price: {amount: 9, per: m2, currency: EUR}
    machine: {cut: 13 mm/s}
    machines: {big: {kerf: 0.3 mm, machine: {cut: 40 mm/s}}}
    measured_on: {kerf: 2026-03-14}
machines: {big: {travel: 400 mm/s}}
machine: big
sheet: {size: [600, 300]}
`;
    const spec =
      'tagwright: 1\nuse: shop.yaml\nstock: oak3\nshapes: {plate: {rectangle: [30, 20]}}\npieces: {tag: {body: [plate]}}\n';
    const { along, svg } = await alongOf(spec, 0, { 'shop.yaml': shop });
    assert.doesNotMatch(along.text!, /price|machine|mm\/s|sheet|measured|use:/);
    assert.match(along.text!, /kerf: 0\.3 mm/, 'as the chosen machine cuts it');
    assert.equal(await svgAgain(along), svg);
    // The same with all of it in the spec itself.
    const own = await alongOf(spec.replace('use: shop.yaml\n', shop.replace('tagwright: 1\n', '')), 0);
    assert.doesNotMatch(own.along.text!, /price|machine|mm\/s|sheet|measured/);
    assert.equal(await svgAgain(own.along), own.svg);
  });

  it('accepts what its writer accepted', async () => {
    const text = `tagwright: 1
stock: {material: oak, thickness: 3 mm, kerf: 0.1 mm}
shapes:
  plate: {rectangle: [30, 20]}
  dot: {ellipse: 4, nudge: {up: 7.6}}  # accept weak-bridge: for Mrs Nettle
pieces:
  # for Mrs Nettle
  tag: {body: [plate], cut: [dot]}
`;
    const made = await report(text);
    const { along } = await alongOf(text, 0);
    const again = await report(along.text!);
    assert.doesNotMatch(along.text!, /Nettle/);
    assert.deepEqual(
      again.accepted.map(({ code }) => code),
      made.accepted.map(({ code }) => code),
    );
    assert.ok(made.accepted.length > 0);
  });

  it('has fonts and drawings beside it in folders of their own', async () => {
    const beside = {
      'fonts/mine.woff': await packagedFont('pacifico'),
      'leaf.svg': '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><path d="M0 0h10v10z"/></svg>',
    };
    const text = `tagwright: 1
stock: {material: oak, thickness: 3 mm, kerf: 0.1 mm}
batch: {table: names.csv}
shapes:
  plate: {rectangle: [60, 30]}
  leaf: {drawing: "{picture}", width: 8, place: {on: plate, at: right}}
  name: {text: "{name}", font: [fonts/mine.woff, Nunito], fit: {in: plate, margin: 2}}
pieces:
  tag: {body: [plate], engrave: [name, leaf]}
`;
    const { along, svg } = await alongOf(text, 1, {
      ...beside,
      'names.csv': 'name,picture\nRue,leaf.svg\nIvy,leaf.svg\n',
    });
    assert.deepEqual(Object.keys(along.files).sort(), ['drawings/leaf.svg', 'fonts/mine.woff']);
    assert.deepEqual(along.lacking, []);
    assert.equal(await svgAgain(along), svg);
  });

  it('is left out where it cannot stand by itself, and its pack says why', async () => {
    const inches = 'tagwright: 1\nunits: in\nshapes: {plate: {path: "M0 0 H2 V1 Z"}}\n';
    const spec = 'tagwright: 1\nuse: shop.yaml\nstock: {material: oak, thickness: 3}\npieces: {tag: {body: [plate]}}\n';
    const { along } = await alongOf(spec, 0, { 'shop.yaml': inches });
    assert.equal(along.text, undefined);
    assert.match(
      along.lacking.join(' '),
      /^The spec is not in the pack\. A file that this spec uses is in other units/,
    );
  });

  it('says which fonts whoever opens it must have installed, and not of those that come with Tagwright', async () => {
    const engine = newEngine();
    const text =
      'tagwright: 1\nshapes: {plate: {rectangle: [60, 30]}, name: {text: Rue, font: Nunito, x_height: 8}}\npieces: {tag: {body: [plate], engrave: [name]}}\n';
    const made = await engine.compute(text, { locate });
    const source = new SpecSource(text.replace('Nunito', 'Garden Script'));
    const { fonts, read } = engine;
    const lackingOf = async (spec: SpecSource) =>
      (await withSpec(jobOf(made)!, { ...made, source: spec }, { fonts, read, locate })).along!.lacking;
    assert.deepEqual(await lackingOf(made.source), []);
    assert.match(
      (await lackingOf(source)).join(' '),
      /^The font Garden Script is not in the pack: it is installed where the pack was made\./,
    );
  });

  // Bits of fsType by the OpenType specification, OS/2 table: 0 is installable, 2 restricted, 4 preview and print, 8 editable.
  for (const fsType of [2, 4, 8])
    it(`leaves out a font that may not be installed from a file it is in (fsType ${fsType}), and says so`, async () => {
      const font = withFsType(await packagedFont('pacifico'), fsType);
      const text = `tagwright: 1
stock: {material: oak, thickness: 3 mm, kerf: 0.1 mm}
shapes: {plate: {rectangle: [60, 30]}, name: {text: Rue, font: theirs.ttf, x_height: 8}}
pieces: {tag: {body: [plate], engrave: [name]}}
`;
      const { along } = await alongOf(text, 0, { 'theirs.ttf': font });
      assert.deepEqual(along.files, {});
      assert.match(along.text!, /font: "?fonts\/theirs\.ttf/);
      const [said, ...more] = along.lacking;
      assert.deepEqual(more, []);
      assert.match(said!, /^The font Pacifico \(“theirs\.ttf”\) is not in the pack: according to its file, it may /);
    });
});
