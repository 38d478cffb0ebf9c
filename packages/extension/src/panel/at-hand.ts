import { type Disposable, TabInputText, type TextDocument, type Uri, window } from 'vscode';
import { languageId } from '../client-options.js';
import { columnOf } from './reveal.js';

/** The cabinet at hand: the one that is edited, or that was until something else came to the front, a walkthrough say. */
export class CabinetAtHand implements Disposable {
  private last = cabinetIn(window.activeTextEditor?.document);
  private readonly listening = window.onDidChangeActiveTextEditor((editor) => {
    this.last = cabinetIn(editor?.document) ?? this.last;
  });

  /** The file, in front again; undefined if none is open. */
  async inFront(): Promise<Uri | undefined> {
    const edited = cabinetIn(window.activeTextEditor?.document);
    if (edited) return edited;
    const open = openCabinets();
    const uri = open.find((one) => one.toString() === this.last?.toString()) ?? open[0];
    if (uri) await window.showTextDocument(uri, { viewColumn: columnOf(uri.toString()) });
    return uri;
  }

  dispose(): void {
    this.listening.dispose();
  }
}

const ENDING = '.joinery';

function cabinetIn(document: TextDocument | undefined): Uri | undefined {
  return document?.languageId === languageId || document?.uri.path.endsWith(ENDING) ? document.uri : undefined;
}

function openCabinets(): readonly Uri[] {
  return window.tabGroups.all.flatMap(({ tabs }) =>
    tabs.flatMap(({ input }) => (input instanceof TabInputText && input.uri.path.endsWith(ENDING) ? [input.uri] : [])),
  );
}
