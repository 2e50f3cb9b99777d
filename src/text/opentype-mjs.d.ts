/** The package's main file cannot be imported by name from a module; this one can, and its types are the same. */
declare module 'opentype.js/dist/opentype.mjs' {
  export * from 'opentype.js';
}
