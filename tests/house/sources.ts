import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder that holds the packages, with its closing separator. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/** One source file: its path from the root with forward slashes, its text, and the modules it names. */
export interface SourceFile {
  path: string;
  text: string;
  imports: string[];
}

/** Every TypeScript source of one package, tests and their fixtures left out. */
export function sourcesOf(packageName: string): SourceFile[] {
  const folder = join(root, 'packages', packageName, 'src');
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name) && !/\.(test|fixture)\.ts$/.test(entry.name))
    .map((entry) => {
      const file = join(entry.parentPath, entry.name);
      const text = readFileSync(file, 'utf8');
      return { path: relative(root, file).replaceAll('\\', '/'), text, imports: importsOf(text) };
    });
}

/**
 * Module names in static imports, re-exports, dynamic imports, type imports and `require` calls. Statements start
 * their line, as the formatter leaves them, so that the word `import` in a message is not taken for one.
 */
export function importsOf(text: string): string[] {
  const forms = [
    /^(?:import|export)\b[^'"`;]*?\bfrom\s*['"]([^'"\n]+)['"]/gm,
    /^import\s*['"]([^'"\n]+)['"]/gm,
    /\b(?:import|require)\s*\(\s*['"`]([^'"`\n]+)['"`]/g,
    /<reference\s+(?:types|path)\s*=\s*['"]([^'"]+)['"]/g,
  ];
  return forms.flatMap((form) => [...text.matchAll(form)].map((match) => match[1] ?? ''));
}

/** The text without its comments and quoted strings; template literals stay, since they may hold code. */
export function codeOf(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"/g, ' ');
}
