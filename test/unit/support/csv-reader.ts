/** CSV files as RFC 4180 has them, read sign by sign: commas, CRLF, quotes that are doubled within quotes. */

export function bySimpleReader(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let at = 0;
  const close = () => {
    rows.at(-1)!.push(cell);
    cell = '';
  };
  while (at < text.length) {
    const sign = text[at]!;
    if (sign === '"') {
      for (at += 1; text[at] !== '"' || text[at + 1] === '"'; at += 1) {
        if (at >= text.length) throw new Error('A quotation mark is never closed.');
        if (text[at] === '"') at += 1;
        cell += text[at]!;
      }
    } else if (sign === ',') close();
    else if (sign === '\r' && text[at + 1] === '\n') {
      close();
      rows.push([]);
      at += 1;
    } else cell += sign;
    at += 1;
  }
  if (cell !== '' || rows.at(-1)!.length > 0) close();
  return rows.filter((row) => row.length > 0);
}
