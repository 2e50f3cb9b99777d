import assert from 'node:assert/strict';
import { parseTable } from '../../../src/spec/files/table.ts';
import type { Table } from '../../../src/spec/files/table.ts';

function table(text: string): Table {
  const read = parseTable(text);
  assert.ok(!('problem' in read), JSON.stringify(read));
  return read;
}

const cells = (text: string): (readonly string[])[] => table(text).rows.map((row) => row.cells);
const problem = (text: string): string | undefined => (parseTable(text) as { problem?: string }).problem;

describe('A table', () => {
  it('is read as RFC 4180 has it', () => {
    // Section 2, rules 1 to 7: line ends, header, spaces, quotes, commas and quotes within quotes.
    assert.deepEqual(table('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n').header, ['aaa', 'bbb', 'ccc']);
    assert.deepEqual(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n'), [['zzz', 'yyy', 'xxx']]);
    assert.deepEqual(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx'), [['zzz', 'yyy', 'xxx']]);
    assert.deepEqual(cells('a,b,c\r\n"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx'), [
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    assert.deepEqual(cells('a,b,c\r\n"aaa","b""bb","c,cc"'), [['aaa', 'b"bb', 'c,cc']]);
  });

  it('is read with the signs of other countries’ spreadsheets, and the mark that some put first', () => {
    for (const sign of [',', ';', '\t'])
      for (const end of ['\n', '\r\n'])
        for (const mark of ['', '\ufeff'])
          assert.deepEqual(
            cells(
              mark +
                [
                  ['name', 'sown'],
                  ['Sorrel', 'March'],
                  ['Chervil', ''],
                ]
                  .map((row) => row.join(sign))
                  .join(end),
            ),
            [
              ['Sorrel', 'March'],
              ['Chervil', ''],
            ],
          );
  });

  it('is not read in a wrong encoding, of which another table would come', () => {
    const why = 'is not UTF-8 text; save it as CSV UTF-8.';
    assert.equal(problem('name\nM\ufffdrz\n'), why);
    // UTF-16 without a mark, taken for UTF-8.
    assert.equal(problem('n\0a\0m\0e\0\n\0R\0u\0e\0'), why);
  });

  it('may have one column only, and words with spaces round them', () => {
    const { header, rows } = table('name\nSorrel\n  Sea Kale \n');
    assert.deepEqual(header, ['name']);
    assert.deepEqual(rows, [
      { cells: ['Sorrel'], line: 2 },
      { cells: ['Sea Kale'], line: 3 },
    ]);
  });

  it('knows the line of each row, past empty ones and those within quotes', () => {
    const { rows } = table('name,note\n"a\nb",1\n\n,\nc\n');
    assert.deepEqual(rows, [
      { cells: ['a\nb', '1'], line: 2 },
      { cells: ['c', ''], line: 6 },
    ]);
  });

  it('says what is wrong with it', () => {
    assert.match(problem('')!, /is empty/);
    assert.match(problem('name\n\n')!, /no rows/);
    assert.match(problem('name,name\na,b')!, /two columns “name”/);
    assert.match(problem('name,,sown\na,b,c')!, /a column without a name/);
    assert.match(problem('{name}\na')!, /a brace in “\{name\}”/);
    assert.match(problem('name\n"Sorrel\nBorage\n')!, /quotation mark that is never closed/);
    // Windows-1252 for “Möhre”, as UTF-8.
    assert.match(
      problem(new TextDecoder().decode(Uint8Array.of(0x6e, 0x0a, 0x4d, 0xf6, 0x68, 0x72, 0x65)))!,
      /not UTF-8/,
    );
    assert.equal(problem('name,\nSorrel,\n'), undefined);
  });
});
