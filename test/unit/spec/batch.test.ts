import assert from 'node:assert/strict';
import { ofBatch } from '../../../src/engine/batch.ts';
import type { Issue } from '../../../src/core/issue.ts';
import type { Report } from '../../../src/engine/engine.ts';
import { textsOf } from '../../../src/spec/model/shape-model.ts';
import type { TextGenerator } from '../../../src/spec/model/shape-model.ts';
import { parseSpec } from '../../../src/spec/parse.ts';
import { newEngine, placeOf, report } from '../support/engine.ts';
import type { Beside } from '../support/engine.ts';

const spec = (batch: string, text = '"{name}"', head = ''): string =>
  `tagwright: 1\n${head}batch: ${batch}\nshapes:\n  word: {text: ${text}, font: Pacifico, width: 60 mm}\npieces:\n  tag: {body: [word], parts: many}\n`;

/** What each row has its shape say; without a place for problems. */
function texts(text: string, rows: number, beside: Beside = {}): Promise<string[]> {
  const engine = newEngine(beside);
  return Promise.all(
    Array.from({ length: rows }, async (_, row) => {
      const { model, issues } = await engine.compute(text, { locate: (name) => `/specs/${name}`, row });
      assert.ok(model, JSON.stringify(issues));
      return (model.shapes.get('word')!.generator as TextGenerator).text;
    }),
  );
}

const messagesOf = async (text: string, beside: Beside = {}): Promise<string[]> => {
  const made: Report = await report(text, newEngine(beside));
  return made.issues.map((issue) => `${issue.code} “${placeOf(made, issue).text}”: ${issue.message}`);
};

function inRow(text: string, row: number, beside: Beside = {}): Promise<Report> {
  return newEngine(beside).compute(text, { locate: (name) => `/specs/${name}`, row });
}

describe('A batch', () => {
  it('is a list of names, of rows, or of both', async () => {
    assert.deepEqual(await texts(spec('[Sorrel, Borage, 7]'), 3), ['Sorrel', 'Borage', '7']);
    assert.deepEqual(
      await texts(spec('[{name: Sorrel, sown: March}, {name: Borage, sown: 3}]', '"{name}, {sown}"'), 2),
      ['Sorrel, March', 'Borage, 3'],
    );
    assert.deepEqual(await texts(spec('[Sorrel, {name: Sea Kale}]'), 2), ['Sorrel', 'Sea Kale']);
  });

  it('has labels of one line, whatever its names are written in', () => {
    const { batch } = parseSpec(spec('["Thank\\nyou", {name: "Herr  Uhu"}]'));
    assert.deepEqual(
      batch!.rows.map(({ label }) => label),
      ['Thank you', 'Herr Uhu'],
    );
  });

  it('is a table beside the spec', async () => {
    const beside = { 'lists/spring.csv': 'plant;sown\nSorrel;March\n"Sea ""Kale""";\n' };
    assert.deepEqual(await texts(spec('lists/spring.csv', '"{plant}"'), 2, beside), ['Sorrel', 'Sea "Kale"']);
    const { files, batch } = await report(spec('lists/spring.csv', '"{plant}"'), newEngine(beside));
    assert.deepEqual(files, ['/specs/lists/spring.csv']);
    assert.deepEqual(batch!.columns, ['plant', 'sown']);
    assert.deepEqual(
      batch!.rows.map(({ label, line }) => [label, line]),
      [
        ['Sorrel', 2],
        ['Sea "Kale"', 3],
      ],
    );
  });

  it('says at the row what a table has beyond its columns', async () => {
    const beside = { 'a.csv': 'name,month\nIvy\nRue,May,late,,dry\n,June,\n' };
    const said = async (row: number) => {
      const made = await inRow(spec('a.csv', '"{name} {month}"'), row, beside);
      return [made.issues, made.inUsed!.flatMap(({ issues }) => issues)].map((all) =>
        all.filter(({ code }) => code === 'odd-value'),
      );
    };
    const [[issue], [there]] = (await said(1)) as [[Issue], [Issue]];
    assert.equal(
      issue.message,
      '“Rue” has more cells than there are columns: “late” and “dry” are left out (line 3 of “a.csv”). A text that has the separator in it needs quotation marks.',
    );
    assert.equal(issue.severity, 'warning');
    assert.equal(there.range.start, beside['a.csv'].indexOf('late'));
    // An empty cell at the end is that of a spreadsheet.
    assert.deepEqual(
      [await said(0), await said(2)],
      [
        [[], []],
        [[], []],
      ],
    );
  });

  it('says that a batch makes one of each where a column says how many', async () => {
    const said = async (text: string, beside: Record<string, string> = {}) => {
      const made = await inRow(text, 0, beside);
      const there = made.inUsed!.flatMap(({ issues }) => issues.map(({ range }) => range.start));
      return [made.issues.filter(({ code }) => code === 'odd-value').map(({ message }) => message), there];
    };
    const message =
      'Nothing uses the column “qty”: a batch makes one tag of each row. A job makes as many as its table of orders says.';
    assert.deepEqual(await said(spec('a.csv', '"{name}"'), { 'a.csv': 'name,qty\nIvy,1\nRue,3\n' }), [[message], [5]]);
    assert.deepEqual(await said(spec('[{name: Ivy, qty: 3}, {name: Rue, qty: 1}]', '"{name}"')), [[message], []]);
    for (const csv of ['name,qty\nIvy,1\nRue,1\n', 'name,qty\nIvy,few\nRue,3\n', 'name,no\nIvy,4\nRue,9\n'])
      assert.deepEqual(await said(spec('a.csv', '"{name}"'), { 'a.csv': csv }), [[], []], csv);
    assert.deepEqual(await said(spec('a.csv', '"{name} {qty}"'), { 'a.csv': 'name,qty\nIvy,2\n' }), [[], []]);
  });

  it('tells columns of a list that nothing uses, and where no column is used at all', async () => {
    const said = async (text: string, beside: Beside = {}) =>
      (await messagesOf(text, beside)).filter((each) => each.startsWith('odd-value'));
    const alike = (where: string, column: string) =>
      `odd-value “${where}”: Nothing on the tag uses a column of its batch, such as “{${column}}”: all 2 tags are alike.`;
    const title = 'title: "Label, {name}"\n';
    assert.deepEqual(await said(spec('[Ivy, Rue]', 'Jyoti', title)), [alike('batch', 'name')]);
    const beside = { 'a.csv': 'name,street\nIvy,Elm Row\nRue,Mill Lane\n' };
    assert.deepEqual(await said(spec('a.csv', 'Jyoti'), beside), [alike('batch', 'name')]);
    assert.deepEqual(await said(spec('a.csv', '"{name}"'), beside), [], 'a table may have more than is used');
    const list = '[{name: Ivy, sown: May}, {name: Rue, sown: June}]';
    assert.deepEqual(await said(spec(list, '"{name}"')), [
      'odd-value “May”: Nothing uses the column “sown” of the batch: no text has “{sown}” in it.',
    ]);
    assert.deepEqual(await said(spec(list, '"{name}"', 'title: "{sown}"\n')), [], 'a title says it');
    const sizes = spec('[{name: Ivy, size: 50 mm}, {name: Rue, size: 60 mm}]', 'Seeds');
    assert.deepEqual(await said(sizes.replace('width: 60 mm', 'width: "{size}"')), [], 'the first tells rows apart');
    assert.deepEqual(await said(spec(list, '"in {sown}"')), [
      'odd-value “Ivy”: Nothing uses the column “name” of the batch: no text has “{name}” in it.',
    ]);
    assert.deepEqual(await said(spec(list, '"{name}, {sow}"')), [], 'what is asked for and not there is told instead');
  });

  it('leaves rows of a table out by their names, and says which name there is not', async () => {
    const beside = { 'a.csv': 'no,plant\n1,Sorrel\n2,Borage\n007,Sea Kale\n' };
    const some = (without: string) => spec(`{table: a.csv, without: ${without}}`, '"{plant}"');
    assert.deepEqual(await texts(some('Borage'), 2, beside), ['Sorrel', 'Sea Kale']);
    assert.deepEqual(await texts(some('["Borage", Sea Kale]'), 1, beside), ['Sorrel']);
    assert.deepEqual(await texts(some('[]'), 3, beside), ['Sorrel', 'Borage', 'Sea Kale']);
    const byNumber = spec('{table: a.csv, without: [007, 1]}', '"{no}"');
    assert.deepEqual(await texts(byNumber, 1, beside), ['2'], 'a number is taken as it is written');
    assert.deepEqual(await messagesOf(some('[Borrage]'), beside), [
      'unknown-name “Borrage”: The table has no “Borrage”. Did you mean “Borage”?',
    ]);
    assert.deepEqual(await messagesOf(some('[Sorrel, Borage, Sea Kale]'), beside), [
      'bad-value “[Sorrel, Borage, Sea Kale]”: All rows of the table are left out.',
    ]);
    assert.match((await messagesOf(spec('{without: [Borage]}')))[0]!, /^missing-key .*“table”/);
  });

  it('names the rows of a table by the first column that its words ask for', async () => {
    const beside = { 'a.csv': 'date,wide,name,month\n2027-05-02,60 mm,Sorrel,May\n2027-05-02,60 mm,,May\n' };
    const labels = async (text: string) =>
      (await report(text, newEngine(beside))).batch!.rows.map(({ label }) => label);
    const wide = spec('a.csv', '"{name}, {month}"').replace('60 mm', '"{wide}"');
    assert.deepEqual(await labels(wide), ['Sorrel', '2027-05-02']);
    assert.deepEqual(await labels(spec('a.csv', 'Seeds', 'title: "Label {month}"\n')), ['May', 'May']);
    assert.deepEqual(await labels(spec('a.csv', 'Seeds')), ['2027-05-02', '2027-05-02']);
  });

  it('draws its last row where one is asked for that is gone', () => {
    const { row, model } = parseSpec(spec('[Sorrel, Borage]'), undefined, 9);
    assert.equal(row, 1);
    assert.equal((model!.shapes.get('word')!.generator as TextGenerator).text, 'Borage');
  });

  it('leaves braces alone in a spec without one, and doubled ones with one', async () => {
    assert.deepEqual(await texts(spec('[Sorrel]').replace('batch: [Sorrel]\n', ''), 1), ['{name}']);
    assert.deepEqual(await texts(spec('[Sorrel]', '"{{name}} {name} { name } {"'), 1), ['{name} Sorrel Sorrel {']);
  });

  it('puts nothing into a cell’s own braces', async () => {
    assert.deepEqual(await texts(spec('[{name: "{sown}", sown: March}]'), 1), ['{sown}']);
  });

  it('has a title for all of its tags, which is no leftover of the title of one', () => {
    for (const [title, all] of [
      ['Seedling label, {name}', 'Seedling label'],
      ['Seedling label, {name}, {sown}', 'Seedling label'],
      ['Names ({name})', 'Names'],
      ['{name}: seed label', 'seed label'],
      ['Label for {name}', 'Label for …'],
      ['{name} sown in {sown}', '… sown in …'],
      ['{{Curly}}, {name}', '{Curly}'],
      ['{name}', 'Sorrel and 1 more'],
      ['{name}, {sown}', 'Sorrel and 1 more'],
    ] as const) {
      const { batch } = parseSpec(spec('[Sorrel, Borage]', '"{name}"', `title: "${title}"\n`));
      assert.equal(batch?.title, all, title);
    }
  });

  it('fills titles, and tells the tags apart by them in any case', () => {
    const title = (head: string): string =>
      parseSpec(spec('[Sorrel, Borage]', '"{name}"', head), undefined, 1).model!.title;
    assert.equal(title('title: "Label, {name}"\n'), 'Label, Borage');
    assert.equal(title('title: Label\n'), 'Label · Borage');
    assert.equal(title(''), 'Borage');
  });

  it('goes by its words where there is no title, and is untitled only without words', () => {
    const shapes = (rest: string): string =>
      `tagwright: 1\nshapes:\n  plate: {rectangle: [60 mm, 20 mm]}\n${rest}pieces:\n  tag: {body: [plate]}\n`;
    const title = (rest: string): string => parseSpec(shapes(rest)).model!.title;
    assert.equal(title(''), 'Untitled tag');
    assert.equal(title('  word: {text: "Wild\\nThyme", height: 10}\n'), 'Wild Thyme');
    const two =
      '  one: {text: Sorrel, height: 9}\n  two: {text: sown in May, height: 5}\n  again: {text: Sorrel, height: 4}\n';
    assert.equal(title(two), 'Sorrel, sown in May');
    assert.equal(title(`  long: {text: "${'word '.repeat(20).trim()}", height: 10}\n`).length, 60);
    const same = 'batch: [Sorrel, Borage]\n' + shapes('  word: {text: Seeds, height: 10}\n');
    assert.equal(parseSpec(same, undefined, 1).model!.title, 'Seeds · Borage');
  });

  it('fills the texts of files that the spec uses', async () => {
    const beside = { 'house.yaml': 'tagwright: 1\nshapes:\n  word: {text: "{name}", font: Pacifico, width: 60 mm}\n' };
    const text =
      'tagwright: 1\nuse: house.yaml\nbatch: [Sorrel, Borage]\npieces:\n  tag: {body: [word], parts: many}\n';
    assert.deepEqual(await texts(text, 2, beside), ['Sorrel', 'Borage']);
    // What a row lacks is told where the row is, also where a used file asks for it.
    const lacking = text.replace('[Sorrel, Borage]', '[{plant: Sorrel}, {name: Borage}]');
    assert.deepEqual(await messagesOf(lacking, beside), ['missing-key “{plant: Sorrel}”: “Sorrel” has no “name”.']);
    assert.deepEqual(await messagesOf(text.replace('[Sorrel, Borage]', '[" "]'), beside), [
      'not-filled “" "”: “row 1” leaves {name} empty.',
    ]);
  });

  it('says which column there is not, and which row lacks one', async () => {
    assert.deepEqual(await messagesOf(spec('[Sorrel]', '"{nmae}"')), [
      'unknown-name “{nmae}”: There is no column “nmae” in the batch. Did you mean “name”?',
    ]);
    assert.deepEqual(await messagesOf(spec('[{plant: Sorrel, sown: 3}]', '"{x}"')), [
      'unknown-name “{x}”: There is no column “x” in the batch. Columns: {plant}, {sown}.',
    ]);
    assert.deepEqual(await messagesOf(spec('[Sorrel, {name: Borage, sown: 3}]', '"{sown}"')), [
      'missing-key “Sorrel”: “Sorrel” has no “sown”.',
    ]);
    assert.deepEqual(await messagesOf(spec('[{name: Sorrel, sown: " "}]', '"{sown}"', 'title: "{name}"\n')), [
      'not-filled “{name: Sorrel, sown: " "}”: “Sorrel” leaves {sown} empty.',
    ]);
    assert.deepEqual(await messagesOf(spec('a.csv', '"{sown}"'), { 'a.csv': 'name,sown\nSorrel,\n' }), [
      'not-filled “a.csv”: “Sorrel” leaves {sown} empty (line 2 of “a.csv”).',
    ]);
    const table = 'name,sown\nSorrel,\n';
    const { inUsed } = await report(spec('a.csv', '"{sown}"'), newEngine({ 'a.csv': table }));
    const [{ file, issues: inTable }] = inUsed as [NonNullable<typeof inUsed>[number]];
    assert.equal(file, '/specs/a.csv');
    assert.deepEqual(
      inTable.map(({ range }) => range),
      [{ start: table.length - 1, end: table.length - 1 }],
    );
  });

  it('misses a line that is its words alone, and does not make the tag without', async () => {
    const lines = (list: string, batch = 'a.csv') =>
      `tagwright: 1\nbatch: ${batch}\nshapes:\n  words: {lines: [${list}], width: 40}\npieces:\n  tag: {body: [words], parts: many}\n`;
    const table = 'name,month\n,May\nUwe,\n';
    const beside = { 'a.csv': table };
    const faults = async (list: string, row: number) => {
      const { issues, inUsed = [], tag } = await inRow(lines(list), row, beside);
      const errors = issues.filter(({ severity }) => severity === 'error');
      const cells = inUsed.flatMap(({ issues: inTable }) => inTable.map(({ range }) => range.start));
      return [errors.map(({ code, message }) => `${code} ${message}`), cells, tag !== undefined];
    };
    const missed = ['not-filled “row 1” leaves {name} empty (line 2 of “a.csv”).'];
    for (const line of ['"{name}"', '{text: "{name}"}'])
      assert.deepEqual(await faults(`read, ${line}`, 0), [missed, [table.indexOf(',May')], false], line);
    assert.deepEqual(await faults('read, "{name}"', 1), [[], [], true]);
    assert.deepEqual(await faults('read, {text: "{name}", optional: true}', 0), [[], [], true]);
    // As a number it would be 7.
    const { model } = await report(lines('"{name}"', '[007]'));
    const { generator } = model!.shapes.get('words')!;
    assert.ok(generator.kind === 'lines');
    assert.deepEqual(
      generator.shapes.flatMap((shape) => textsOf(shape.generator).map(({ text }) => text)),
      ['007'],
    );
  });

  it('says what an empty cell leaves of longer words, at the row and at the cell', async () => {
    const isGap = (message: string): boolean => message.startsWith('not-filled');
    const gap = 'and only “sown” is left. As an entry of “lines” with “optional: true” the line would be left out.';
    assert.deepEqual((await messagesOf(spec('[{name: Ida, month: ""}]', '"{name}\\nsown {month}"'))).filter(isGap), [
      `not-filled “{name: Ida, month: ""}”: “Ida” leaves {month} in “sown {month}” empty, ${gap}`,
    ]);
    const table = 'name,month\nIda,\nUwe,May\n';
    const made = await report(spec('a.csv', '"sown {month}"'), newEngine({ 'a.csv': table }));
    assert.deepEqual(
      made.inUsed!.map(({ issues }) => issues.map(({ range, severity }) => [range.start, severity])),
      [[[table.indexOf('\nUwe'), 'warning']]],
    );
    // Nothing is missed where another cell, or no word of its own, stands in the line.
    for (const words of ['"{name} {month}"', '"{name}\\n{month}"', '"for {month} {name}"', '"{name} {month} sown"'])
      assert.ok(!(await messagesOf(spec('[{name: Ida, month: ""}]', words))).some(isGap), words);
    // Words and signs that lead to it lead to nothing.
    for (const [words, left] of [
      ['"{name}, {month}"', 'Ida,'],
      ['"{name} ({month})"', 'Ida ()'],
      ['"sown by {name} in {month}"', 'sown by Ida in'],
      ['"in {month}: {name}"', 'in : Ida'],
    ] as const) {
      const [only, ...others] = (await messagesOf(spec('[{name: Ida, month: ""}]', words))).filter(isGap);
      assert.ok(only?.includes(`and only “${left}” is left. Fill the cell`), `${words}: ${only}`);
      assert.deepEqual(others, []);
    }
    const optional =
      'tagwright: 1\nbatch: [{name: Ida, month: ""}]\nshapes:\n  words: {lines: [{text: "{name}"}, {text: "sown {month}"EXTRA}], width: 40}\npieces:\n  tag: {body: [words], parts: many}\n';
    assert.equal((await messagesOf(optional.replace('EXTRA', ''))).filter(isGap).length, 1);
    assert.ok(!(await messagesOf(optional.replace('EXTRA', ', optional: true'))).some(isGap));
  });

  it('makes the tag all the same, as after any warning', async () => {
    for (const words of ['"sown {month}"', '"{name}, {month}"']) {
      const { issues, tag } = await report(spec('[{name: Ida, month: ""}]', words));
      assert.ok(
        issues.some(({ code, severity }) => code === 'not-filled' && severity === 'warning'),
        words,
      );
      assert.equal(tag?.pieces.length, 1, words);
    }
  });

  it('does not make a code that an empty cell leaves incomplete', async () => {
    const code = (row: string) =>
      `tagwright: 1\nbatch: [${row}]\nshapes:\n  plate: {rectangle: [60, 60]}\n  code: {code: "https://seeds.example/{number}", size: 40, place: {on: plate}}\npieces:\n  tag: {body: [plate], engrave: [code]}\n`;
    const { issues } = await report(code('{name: Ida, number: ""}'));
    assert.deepEqual(
      issues.filter(({ code: kind }) => kind === 'not-filled').map(({ severity, message }) => [severity, message]),
      [
        [
          'error',
          '“Ida” leaves {number} in “https://seeds.example/{number}” empty: the code would say only “https://seeds.example/”.',
        ],
      ],
    );
    assert.deepEqual(
      (await report(code('{name: Ida, number: 7}'))).issues.filter(({ severity }) => severity === 'error'),
      [],
    );
  });

  it('tells an empty code, list or shape at the row and at the cell that leave it so, each column by itself', async () => {
    const plates = (batch: string) =>
      `tagwright: 1\nbatch: ${batch}\nshapes:\n  plate: {rectangle: ["{w}", "{h}"]}\n  code: {code: "{url}", size: 12, place: {on: plate}}\npieces:\n  tag: {body: [plate], engrave: [code]}\n`;
    const list =
      '[{name: Ida, url: "", w: 40, h: 30}, {name: Uwe, url: a, w: 40, h: ""}, {name: Eva, url: a, w: "", h: ""}]';
    assert.deepEqual(
      (await Promise.all([0, 1, 2].map((row) => inRow(plates(list), row)))).map(({ issues, source }) =>
        issues
          .filter(({ severity }) => severity === 'error')
          .map(({ message, range }) => `${source.text.slice(range.start, range.end)} ${message}`),
      ),
      [
        ['{name: Ida, url: "", w: 40, h: 30} “Ida” leaves {url} empty.'],
        ['{name: Uwe, url: a, w: 40, h: ""} “Uwe” leaves {h} empty, and “rectangle” cannot do without.'],
        ['{name: Eva, url: a, w: "", h: ""} “Eva” leaves {w} empty, and “plate” cannot do without.'],
      ],
    );
    const table = 'name,url,w,h\nIda,,40,30\nUwe,a,40,\n';
    const beside = { 'a.csv': table };
    const [first, second] = [await inRow(plates('a.csv'), 0, beside), await inRow(plates('a.csv'), 1, beside)];
    const cells = [first, second].map(({ inUsed }) =>
      inUsed!.flatMap(({ issues }) => issues.map(({ range }) => range.start)),
    );
    assert.deepEqual(cells, [[table.indexOf(',40,30')], [table.length - 1]]);
    assert.deepEqual(
      ofBatch(first, [first, second], { joined: true }).issues.map(({ message }) => message),
      [
        '“Ida” leaves {url} empty (line 2 of “a.csv”).',
        '“Uwe” leaves {h} empty (line 3 of “a.csv”), and “rectangle” cannot do without.',
      ],
    );
  });

  it('says what is wrong with the list or the table, at its place', async () => {
    assert.deepEqual(await messagesOf(spec('missing.csv')), [
      'bad-file “missing.csv”: “missing.csv” cannot be found or read.',
    ]);
    assert.deepEqual(await messagesOf(spec('a.csv'), { 'a.csv': 'name,name\na,b\n' }), [
      'bad-file “a.csv”: “a.csv” has two columns “name” in its first line.',
    ]);
    assert.deepEqual(await messagesOf(spec('[]')), ['bad-value “[]”: “batch” needs at least one entry.']);
    assert.match(
      (await messagesOf(spec('[[Sorrel]]')))[0]!,
      /^bad-value “\[\[Sorrel\]\]”: .* What goes here: The same tag for a list/,
    );
    const many = `name\n${'Sorrel\n'.repeat(2001)}`;
    assert.deepEqual(await messagesOf(spec('a.csv'), { 'a.csv': many }), [
      'bad-value “a.csv”: A batch has at most 2000 rows; this one has 2001.',
    ]);
  });

  it('asks for the quotes without which YAML takes braces for a group', async () => {
    const made = await report(spec('[Sorrel]', '{name}'));
    const [issue] = made.issues;
    assert.equal(issue!.message, '“text” needs quotes, because YAML reads braces as a group: "{name}".');
    assert.deepEqual(issue!.suggestions, ['"{name}"']);
    assert.equal(placeOf(made, issue!).text, '{name}');
  });
});
