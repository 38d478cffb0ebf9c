/** All that this package knows of Node, which its other hosts are without. */
declare module 'node:v8' {
  /** Takes effect at once, if V8 knows the flag. */
  export function setFlagsFromString(flags: string): void;
}

declare module 'node:fs/promises' {
  export function readFile(path: string): Promise<Uint8Array>;
  export function stat(path: string): Promise<{ isFile(): boolean; readonly size: number }>;
}

declare module 'node:worker_threads' {
  export class Worker {
    constructor(script: string);
    postMessage(message: unknown): void;
    on(event: 'message', listener: (message: unknown) => void): void;
    on(event: 'error', listener: (error: Error) => void): void;
    on(event: 'exit', listener: (code: number) => void): void;
    /** The process need not go on for it. */
    unref(): void;
    terminate(): Promise<number>;
  }
  /** Undefined where the script was not started as a thread. */
  export const parentPort:
    | { postMessage(message: unknown): void; on(event: 'message', listener: (message: unknown) => void): void }
    | undefined;
}

declare const process: { readonly versions: { readonly node: string } };

/** Folder of the bundle, which is CommonJS. */
declare const __dirname: string;
