import { commands, Disposable, LanguageStatusSeverity, languages, window, workspace } from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';
import { languageId } from '../client-options.js';
import type { FitStates } from '../fit-states.js';
import { statusWords, type Worked } from './words.js';

const severities = {
  information: LanguageStatusSeverity.Information,
  warning: LanguageStatusSeverity.Warning,
  error: LanguageStatusSeverity.Error,
};

/** Keeps the language status of the file at hand: how it stands, in which units; a click opens its drawing. */
export function registerStatus(client: BaseLanguageClient, states: FitStates): Disposable {
  const item = languages.createLanguageStatusItem('dryfit.fit', { language: languageId });
  item.name = 'Dryfit';
  const show = () => {
    item.busy = client.state === State.Starting;
    if (client.state === State.Stopped) {
      Object.assign(item, { text: '$(debug-disconnect) Not running', detail: '', severity: severities.error });
      item.command = { command: 'dryfit.restartServer', title: 'Start' };
      return;
    }
    const uri = window.activeTextEditor?.document.uri.toString();
    const { text, detail, severity } = statusWords(uri === undefined ? undefined : states.of(uri), worked());
    Object.assign(item, { text, detail, severity: severities[severity] });
    item.command = { command: 'dryfit.openDrawing', title: 'Open Drawing' };
  };
  show();
  return Disposable.from(
    item,
    states.onTold((state) => {
      if (state.uri === window.activeTextEditor?.document.uri.toString()) show();
      tellWalkthrough(state.state);
    }),
    client.onDidChangeState(show),
    window.onDidChangeActiveTextEditor(show),
    workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration('dryfit')) show();
    }),
  );
}

function worked(): Worked {
  const settings = workspace.getConfiguration('dryfit');
  return {
    joinery: settings.get<boolean>('joinery') !== false,
    thickness: settings.get<string>('thickness') === 'nominal' ? 'nominal' : 'measured',
  };
}

let hadFindings = false;

/** Marks the steps of the walkthrough that are done by what happens to a cabinet. */
function tellWalkthrough(state: 'fits' | 'findings' | 'broken'): void {
  const mark = (step: string) => void commands.executeCommand('setContext', `dryfit.${step}`, true);
  if (state === 'fits') mark(hadFindings ? 'hasBeenCured' : 'hasFitted');
  if (state !== 'findings') return;
  hadFindings = true;
  mark('hasHadFindings');
}
