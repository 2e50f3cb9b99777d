import assert from 'node:assert/strict';
import { jobOf } from '../../../src/export/job/job.ts';
import { proofPage } from '../../../src/export/proof/proof.ts';
import { newEngine, report } from '../support/engine.ts';
import { tools } from '../support/tools.ts';

const name = 'name: {text: "{keeper}", font: Great Vibes, x_height: 9 mm, place: {on: plate}}';
const spec = (shapes: string, piece: string, head = ''): string => `tagwright: 1
${head}stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}
shapes:
  plate: {rectangle: [90 mm, 40 mm], radius: 4 mm}
  ${shapes}
pieces:
  tag: {${piece}}
`;
const engraved = 'body: [plate], engrave: [name]';

async function messagesOf(text: string, files = {}): Promise<string[]> {
  const { issues, source } = await report(text, newEngine(files));
  return issues
    .filter(({ code }) => code === 'not-filled')
    .map(({ severity, message, range }) => `${severity} ${source.position(range.start).line}: ${message}`);
}

async function proofOf(text: string): Promise<string> {
  const page = await proofPage(jobOf(await report(text))!, tools, true);
  return page.words.map((each) => each.text).join(' ');
}

describe('Words that no batch fills in', () => {
  it('are reported at their line', async () => {
    assert.deepEqual(await messagesOf(spec(name, engraved)), [
      'warning 5: “{keeper}” stays on the tag as written: this spec has no batch to fill it in.',
    ]);
    assert.deepEqual(await messagesOf(spec(name.replace('{keeper}', '{keeper}, {month}, {keeper}'), engraved)), [
      'warning 5: “{keeper}” and “{month}” stay on the tag as written: this spec has no batch to fill them in.',
    ]);
  });

  it('are those of lines, codes and titles as well, and of a file that is used', async () => {
    assert.match(
      (await messagesOf(spec('name: {lines: [{text: from}, {text: "{keeper}"}], width: 60}', engraved))).join(),
      /^warning 5/,
    );
    assert.match((await messagesOf(spec('name: {code: "seeds/{keeper}", size: 30}', engraved))).join(), /^warning 5/);
    assert.deepEqual(await messagesOf(spec('name: {ellipse: 9}', engraved, 'title: For {keeper}\n')), [
      'warning 2: “{keeper}” stays in the title as written: this spec has no batch to fill it in.',
    ]);
    const files = { 'house.yaml': `tagwright: 1\nshapes:\n  ${name.replace(', place: {on: plate}', '')}\n` };
    assert.match(
      (await messagesOf(spec('disc: {ellipse: 9}', engraved, 'use: house.yaml\n'), files)).join(),
      /^warning 2/,
    );
  });

  it('are none with a batch, of orders too, nor words without such braces, nor shapes that no piece has', async () => {
    const text = spec(name, engraved);
    assert.deepEqual(await messagesOf(spec(name, engraved, 'batch: [{keeper: Tansy}]\n')), []);
    const row = { label: 'Tansy', cells: new Map([['keeper', 'Tansy']]), path: [] };
    const batch = { columns: ['keeper'], title: '', rows: [row] };
    const filled = await newEngine().compute(text, { locate: () => undefined, batch });
    assert.deepEqual(
      filled.issues.filter(({ code }) => code === 'not-filled'),
      [],
    );
    for (const words of ['keeper', '{}', '{{keeper}}', '{ }'])
      assert.deepEqual(await messagesOf(spec(name.replace('{keeper}', words), engraved)), [], words);
    assert.deepEqual(await messagesOf(spec(name, 'body: [plate]')), []);
  });

  it('make a proof a draft that nobody signs, unless they are meant so', async () => {
    const text = spec(name, engraved);
    assert.match(await proofOf(text), /Draft: not ready to be made yet/);
    assert.doesNotMatch(await proofOf(text), /sign here/);
    for (const sound of [
      spec(name, engraved, 'batch: [{keeper: Tansy}]\n'),
      spec(`${name} # accept not-filled: a label for a box of stencils`, engraved),
    ]) {
      assert.doesNotMatch(await proofOf(sound), /Draft/);
      assert.match(await proofOf(sound), /sign here/);
    }
  });

  it('are not judged as letters, nor what is made of them; what is wrong with other words is', async () => {
    const codes = async (text: string) => new Set((await report(text)).issues.map(({ code }) => code));
    const cut = 'body: [plate], cut: [name]';
    const thin = /weak|thin|sharp|speck|hard-to-read/;
    const own = await codes(spec(name, cut));
    assert.ok(own.has('not-filled') && ![...own].some((code) => thin.test(code)), [...own].join());
    const from = `${name}\n  bold: {from: name, grow: 0.1 mm}`;
    const made = await codes(spec(from, 'body: [plate], cut: [bold]'));
    assert.ok(made.has('not-filled') && ![...made].some((code) => thin.test(code)), [...made].join());
    const other = `${name}\n  month: {text: "March, April", font: Great Vibes, x_height: 3 mm, place: {on: plate}}`;
    const both = await codes(spec(other, 'body: [plate], engrave: [name], cut: [month]'));
    assert.ok(
      [...both].some((code) => thin.test(code)),
      [...both].join(),
    );
    const plain = await codes(spec(name.replace('{keeper}', 'keeper'), cut));
    assert.ok(
      [...plain].some((code) => thin.test(code)),
      [...plain].join(),
    );
  });
});
