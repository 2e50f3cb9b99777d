/** Declares the package's ES module, which can be imported by name; its main file cannot. The types are the same. */
declare module 'opentype.js/dist/opentype.mjs' {
  export * from 'opentype.js';
}
