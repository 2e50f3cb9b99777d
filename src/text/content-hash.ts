/**
 * A short name for content: 64 bits from two multiplicative hashes over the bytes, mixed at the end so that every bit
 * of the input affects every bit of the name. It tells files apart; it does not protect against forgery.
 */
export function contentHash(parts: readonly Uint8Array[]): string {
  let a = 0xdeadbeef;
  let b = 0x41c6ce57;
  const take = (value: number): void => {
    a = Math.imul(a ^ value, 0x9e3779b1);
    b = Math.imul(b ^ value, 0x5f356495);
  };
  for (const part of parts) {
    // By index: a font has a hundred thousand bytes, and an iterator makes an object of each.
    for (let index = 0; index < part.length; index++) take(part[index]!);
    // The boundary between two parts counts too.
    take(part.length);
  }
  return [mixHash(a, b), mixHash(b, a)].map((half) => half.toString(16).padStart(8, '0')).join('');
}

function mixHash(half: number, other: number): number {
  const mixed = Math.imul(half ^ (half >>> 16), 0x85ebca6b) ^ Math.imul(other ^ (other >>> 13), 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) >>> 0;
}
