import {
  type AstNode,
  type Cancellation,
  DefaultLangiumDocumentFactory,
  type LangiumDocument,
  type LangiumSharedCoreServices,
  type ParseResult,
  type URI,
} from 'langium';
import { reparse } from '../parser/reparse.js';

/** Factory that reads of a text that changes what has changed. */
export class JoineryDocumentFactory extends DefaultLangiumDocumentFactory {
  /** The document that is being brought up to its text. */
  private updated: LangiumDocument | undefined;

  constructor(services: LangiumSharedCoreServices) {
    super(services);
  }

  override async update<T extends AstNode>(
    document: LangiumDocument<T>,
    cancellationToken: Cancellation.CancellationToken,
  ): Promise<LangiumDocument<T>> {
    this.updated = document;
    try {
      return await super.update(document, cancellationToken);
    } finally {
      this.updated = undefined;
    }
  }

  protected override async parseAsync<T extends AstNode>(
    uri: URI,
    text: string,
    cancellationToken: Cancellation.CancellationToken,
  ): Promise<ParseResult<T>> {
    const { updated } = this;
    const whole = () => super.parseAsync<T>(uri, text, cancellationToken);
    if (updated?.uri.toString() !== uri.toString()) return whole();
    const parser = this.serviceRegistry.getServices(uri).parser.LangiumParser;
    const result = reparse(updated.parseResult, text, (part) => parser.parse(part));
    return (result as unknown as ParseResult<T> | undefined) ?? whole();
  }
}
