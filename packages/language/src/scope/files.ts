import { AstUtils, DocumentState, type LangiumDocuments, type LangiumSharedCoreServices } from 'langium';
import type { File } from '../generated/ast.js';
import { isLibrary } from '../library/library.js';
import { remember } from '../remember.js';
import { fileOf, importsOf } from './imports.js';
import { type Named, namesOfFile } from './names.js';

/** A name that two files both bring, neither of which the other one is. */
export interface Clash {
  readonly name: string;
  readonly chosen: Named;
  readonly hidden: Named;
}

/**
 * What a file sees: its own entries, then those of the files it imports, then those of the files these import, and
 * so on; the built-in library last of all. Imports are passed on, so that a cabinet that imports its shop has what
 * the shop draws on. The nearer definition hides the farther one, and whatever is written hides the library.
 */
export class Files {
  private readonly documents: LangiumDocuments;
  private readonly visible = new Map<File, readonly File[]>();

  constructor(services: LangiumSharedCoreServices) {
    this.documents = services.workspace.LangiumDocuments;
    const forget = () => this.visible.clear();
    services.workspace.DocumentBuilder.onUpdate(forget);
    services.workspace.DocumentBuilder.onBuildPhase(DocumentState.Parsed, forget);
  }

  /** The file itself and all it sees, the nearest first. */
  layers(file: File): readonly File[] {
    return remember(this.visible, file, () => this.collect(file));
  }

  /** The nearest thing of a type and name. */
  find(file: File, type: string, name: string): Named | undefined {
    for (const layer of this.layers(file)) {
      const found = namesOfFile(layer).byType.get(type)?.get(name);
      if (found) return found;
    }
    return undefined;
  }

  /** Everything of a type that the file sees, each name once. */
  all(file: File, type: string): ReadonlyMap<string, Named> {
    const found = new Map<string, Named>();
    for (const layer of this.layers(file)) {
      for (const [name, node] of namesOfFile(layer).byType.get(type) ?? []) if (!found.has(name)) found.set(name, node);
    }
    return found;
  }

  /** Names that two written files bring to this one, where neither of the two sees the other. */
  clashes(file: File, type: string): readonly Clash[] {
    const owners = new Map<string, Named>();
    const clashes: Clash[] = [];
    for (const layer of this.layers(file)) {
      for (const [name, node] of namesOfFile(layer).byType.get(type) ?? []) {
        const chosen = owners.get(name);
        if (chosen === undefined) owners.set(name, node);
        else if (!this.hides(chosen, layer, file)) clashes.push({ name, chosen, hidden: node });
      }
    }
    return clashes;
  }

  /** True if the file of a thing may well have the same name as another file, because it knows that file. */
  private hides(chosen: Named, other: File, from: File): boolean {
    const owner = AstUtils.findRootNode(chosen) as File;
    if (owner === from) return true;
    const uri = other.$document?.uri;
    return (uri !== undefined && isLibrary(uri)) || this.layers(owner).includes(other);
  }

  private collect(file: File): readonly File[] {
    const written: File[] = [file];
    const library: File[] = [];
    const seen = new Set<File>(written);
    for (const layer of written) {
      for (const found of this.importedBy(layer)) {
        if (seen.has(found)) continue;
        seen.add(found);
        (found.$document && isLibrary(found.$document.uri) ? library : written).push(found);
      }
    }
    for (const layer of library) {
      for (const found of this.importedBy(layer)) {
        if (seen.has(found)) continue;
        seen.add(found);
        library.push(found);
      }
    }
    return [...written, ...library];
  }

  private importedBy(file: File): readonly File[] {
    if (!file.$document) return [];
    return importsOf(file.$document)
      .map((uri) => fileOf(this.documents.getDocument(uri)))
      .filter((found) => found !== undefined);
  }
}
