/** The package names its types by a path at which they are not. */
declare module 'clipper2-wasm' {
  import type { MainModule } from 'clipper2-wasm/dist/clipper2z.d.ts';
  export type * from 'clipper2-wasm/dist/clipper2z.d.ts';
  export default function load(): Promise<MainModule>;
}
