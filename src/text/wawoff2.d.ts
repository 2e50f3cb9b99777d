/** Types for the part of wawoff2 that is used; the package ships none. */
declare module 'wawoff2/decompress.js' {
  export default function decompress(woff2: Uint8Array): Promise<Uint8Array>;
}
