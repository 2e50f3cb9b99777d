import assert from 'node:assert/strict';
import { textOfBytes } from '../../../src/core/text-of-bytes.ts';

describe('The text of a file', () => {
  it('is read from UTF-8, and from UTF-16 where that is marked, as Node writes them', () => {
    const text = 'name\tsown\r\nMärzbecher\tFébruary 🌱\r\n';
    const little = Buffer.from(`\ufeff${text}`, 'utf16le');
    for (const bytes of [Buffer.from(text), Buffer.from(`\ufeff${text}`), little, Buffer.from(little).swap16()])
      assert.equal(textOfBytes(bytes), text);
    assert.equal(textOfBytes(new Uint8Array()), '');
    assert.match(textOfBytes(Buffer.from('Märzbecher', 'latin1')), /\ufffd/);
  });
});
