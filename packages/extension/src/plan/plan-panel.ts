import { PLAN, type PlannedFile, type TextPlace } from '@dryfit/language/protocol';
import { type TextEditor, type Uri, type WebviewPanel, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { FitStates } from '../fit-states.js';
import { FilePanel } from '../panel/file-panel.js';
import { Turns } from '../panel/linking.js';
import type { FromPlan, Standing, ToPlan } from '../panel/messages.js';
import { reveal } from '../panel/reveal.js';
import type { Wanted } from '../tasks/provider.js';
import { litAt, planDrawsOn } from './lit.js';

type Heard = Exclude<FromPlan, { kind: 'ready' }>;

/** In which set-ups a job of one file is milled. */
export class PlanPanel extends FilePanel<PlannedFile, FromPlan, ToPlan> {
  private readonly turns = new Turns();
  /** The job that is asked for; undefined while any will do. */
  private job: string | undefined;

  constructor(
    panel: WebviewPanel,
    uri: Uri,
    client: BaseLanguageClient,
    states: FitStates,
    private readonly print: (uri: Uri, wanted: Wanted) => Promise<void>,
  ) {
    super(panel, uri, client, states, PLAN);
  }

  /** The job that is shown. */
  get shown(): string | undefined {
    return this.answer?.plan?.job;
  }

  protected override more(): object {
    if (this.answer !== undefined) this.say({ kind: 'asked' });
    return { job: this.job };
  }

  protected override drawsOn(uri: string): boolean {
    const plan = this.answer?.plan;
    return plan ? planDrawsOn(plan, uri) : true;
  }

  protected override show(standing: Standing, job: string | undefined): void {
    if (job !== undefined) this.choose(job);
    this.say({ kind: 'plan', standing, jobs: this.answer?.jobs ?? [], plan: this.answer?.plan, job });
    if (window.activeTextEditor) this.light(window.activeTextEditor);
  }

  protected override light({ document, selection }: TextEditor): void {
    const plan = this.answer?.plan;
    if (plan) this.say({ kind: 'lit', ...litAt(plan, document.uri.toString(), selection.active) });
  }

  protected override async hear(message: Heard): Promise<void> {
    switch (message.kind) {
      case 'job':
        return this.choose(message.job);
      case 'open': {
        const setUp = this.answer?.plan?.setUps[message.setUp];
        const { row, setting } = message;
        const [kind, of] = row === undefined ? ['setting', setUp?.settings[setting ?? 0]] : ['row', setUp?.rows[row]];
        return this.open(`${kind} ${message.setUp} ${row ?? setting}`, of?.places ?? []);
      }
      case 'open-job':
        return this.open('job', this.answer?.plan?.places ?? []);
      case 'print':
        return this.print(this.uri, message);
    }
  }

  private choose(job: string): void {
    if (this.job === job) return;
    this.job = job;
    if (this.shown !== job) this.askAgain();
  }

  /** Each of its places in turn. */
  private async open(what: string, places: readonly TextPlace[]): Promise<void> {
    const place = places[this.turns.next(what, places.length)];
    if (place) await reveal(place);
  }
}
