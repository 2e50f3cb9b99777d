/** The part of wawoff2 that is used; the package has no types. */
declare module 'wawoff2/decompress.js' {
  export default function decompress(woff2: Uint8Array): Promise<Uint8Array>;
}
