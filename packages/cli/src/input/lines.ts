import type { Source } from '@dryfit/engine';
import type { Quoted } from '@dryfit/output';

/** A text by its lines, for telling where something stands in it. */
export class Lines {
  private readonly starts: number[] = [0];

  constructor(private readonly text: string) {
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) this.starts.push(at + 1);
  }

  /** The place and the lines of a source; one beyond the text is taken to its end. */
  quote(source: Source, file: string): Quoted {
    const start = Math.min(source.start, this.text.length);
    const end = Math.min(Math.max(source.start, source.end), this.text.length);
    const first = this.lineAt(start);
    const last = this.lineAt(end);
    return {
      file,
      line: first + 1,
      column: start - (this.starts[first] ?? 0) + 1,
      endLine: last + 1,
      endColumn: end - (this.starts[last] ?? 0) + 1,
      lines: Array.from({ length: last - first + 1 }, (_, i) => this.line(first + i)),
    };
  }

  private line(number: number): string {
    return this.text.slice(this.starts[number], this.starts[number + 1] ?? this.text.length).replace(/\r?\n$/, '');
  }

  /** Number of the last line that starts at or before an offset. */
  private lineAt(offset: number): number {
    let low = 0;
    let high = this.starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}
