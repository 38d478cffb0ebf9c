import { useEffect, useState } from 'preact/hooks';
import type { FromPlan, ToPlan } from '../../panel/messages.js';
import { compare } from '../../plan/compare.js';
import { useKept, useMessages } from '../hooks.js';
import type { Host } from '../host.js';
import { isOld, Standing } from '../standing.js';
import { Changes } from './changes.js';
import { Head } from './head.js';
import { Rows } from './rows.js';
import { SetUp } from './set-up.js';
import { compareFromNow, START, timeWords, type View, withPlan } from './state.js';

type Lit = Omit<Extract<ToPlan, { kind: 'lit' }>, 'kind'>;

/** The page of a plan. */
export function App({ host }: { readonly host: Host<FromPlan, View> }) {
  const [view, setView] = useState<View>(() => ({ ...START, ...host.kept() }));
  const [shown, setShown] = useState<Extract<ToPlan, { kind: 'plan' }> | undefined>(undefined);
  const [lit, setLit] = useState<Lit>({ rows: [], settings: [] });
  const [asked, setAsked] = useState(false);

  useMessages<FromPlan, View, ToPlan>(host, (data) => {
    switch (data.kind) {
      case 'plan':
        setShown(data);
        setAsked(false);
        // Another job is on its way, and this is not the one that the reader left.
        if (data.job !== undefined && data.job !== data.plan?.job && data.jobs.includes(data.job)) return;
        return setView((before) => withPlan(before, data.standing, data.plan, Date.now()));
      case 'asked':
        return setAsked(true);
      case 'lit':
        return setLit(data);
    }
  });
  useKept(host, view);
  // The extension does not know which job the reader had chosen before the page was last thrown away.
  useEffect(() => {
    if (view.job !== '') host.say({ kind: 'job', job: view.job });
  }, [host]);
  // What the cursor has come into is brought into sight; what is in sight already stays where it is.
  useEffect(() => {
    if (!document.hasFocus()) document.querySelector('tr.lit')?.scrollIntoView({ block: 'nearest' });
  }, [lit.rows.join()]);

  if (!shown) return <p class="standing">Working out the plan…</p>;
  const { plan, jobs, standing } = shown;
  const base = plan && view.bases[plan.job];
  const compared = base && plan && compare(base, plan);
  const goTo = (setUp: number) => {
    const section = document.getElementById(`set-up-${setUp + 1}`);
    section?.scrollIntoView();
    section?.focus();
  };
  return (
    <main class={isOld(standing) ? 'plan stale' : 'plan'}>
      <Head
        name={standing.name}
        jobs={jobs}
        plan={plan}
        choose={(job) => host.say({ kind: 'job', job })}
        openJob={() => host.say({ kind: 'open-job' })}
        print={() => plan && host.say({ kind: 'print', job: plan.job })}
      />
      <Standing standing={standing} what="planned" />
      {plan?.warning !== undefined && <p class="warning">{plan.warning}</p>}
      {asked && (
        <p class="told late" role="status">
          Working the plan out anew…
        </p>
      )}
      {!plan && !isOld(standing) && (
        <p>
          There is no job in {standing.name}. A job says how many of which cabinet are made; its plan is shown here.
        </p>
      )}
      {plan && (
        <ul class="notes totals">
          {plan.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
      {plan && base && compared && (
        <Changes
          compared={compared}
          since={timeWords(base.at, Date.now())}
          fromNow={() => setView(compareFromNow(view, plan, Date.now()))}
          goTo={goTo}
        />
      )}
      {plan?.setUps.map((setUp, i) => (
        <SetUp
          key={i}
          index={i}
          setUp={setUp}
          change={compared?.setUps[i]}
          lit={lit}
          open={(what) => host.say({ kind: 'open', setUp: i, ...what })}
          print={() => host.say({ kind: 'print', job: plan.job, setUp: i + 1 })}
        />
      ))}
      {plan?.more.map(({ title, columns, rows, notes }) => (
        <section key={title} class="more">
          <h2>{title}</h2>
          <Rows label={title} columns={columns} rows={rows} />
          <ul class="notes">
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </section>
      ))}
      {plan && plan.cautions.length > 0 && (
        <section>
          <h2>Before you start</h2>
          <ul class="notes">
            {plan.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </section>
      )}
    </main>
  );
}
