/** All that this package knows of Node, which its other hosts are without. */
declare module 'node:v8' {
  /** Takes effect at once, if V8 knows the flag. */
  export function setFlagsFromString(flags: string): void;
}

declare const process: { readonly versions: { readonly node: string } };
