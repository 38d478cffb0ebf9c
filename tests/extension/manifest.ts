import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const extension = join(root, 'packages/extension');

interface Setting {
  readonly default: unknown;
  readonly markdownDescription?: string;
  readonly enum?: readonly string[];
  readonly enumDescriptions?: readonly string[];
  readonly properties?: Readonly<Record<string, { readonly description: string }>>;
}

interface Matcher {
  readonly name: string;
  readonly pattern: readonly {
    readonly regexp: string;
    readonly severity?: number;
    readonly code?: number;
    readonly message?: number;
    readonly file?: number;
    readonly line?: number;
    readonly column?: number;
  }[];
}

interface Step {
  readonly id: string;
  readonly description: string;
  readonly media: { readonly markdown?: string; readonly svg?: string };
  readonly completionEvents: readonly string[];
}

/** What is read of the extension's package.json. */
export interface Manifest {
  readonly version: string;
  readonly main: string;
  readonly browser: string;
  readonly contributes: {
    readonly commands: readonly { readonly command: string; readonly title: string; readonly category: string }[];
    readonly configuration: { readonly properties: Readonly<Record<string, Setting>> };
    readonly problemMatchers: readonly [Matcher];
    readonly taskDefinitions: readonly [{ readonly properties: { readonly command: { readonly enum: string[] } } }];
    readonly walkthroughs: readonly [{ readonly id: string; readonly steps: readonly Step[] }];
  };
}

export const manifest: Manifest = JSON.parse(readFileSync(join(extension, 'package.json'), 'utf8'));
