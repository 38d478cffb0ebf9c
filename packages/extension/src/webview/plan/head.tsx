import type { PlanRows } from '@dryfit/language/protocol';

interface HeadProps {
  readonly name: string;
  readonly jobs: readonly string[];
  readonly plan: PlanRows | undefined;
  readonly choose: (job: string) => void;
  readonly openJob: () => void;
  readonly print: () => void;
}

/** Which job, what it takes, and taking it to the bench. */
export function Head({ name, jobs, plan, choose, openJob, print }: HeadProps) {
  if (!plan) return <h1 class="unseen">Plan of {name}</h1>;
  return (
    <header>
      <h1>
        Plan of{' '}
        <button type="button" class="link" onClick={openJob}>
          job {plan.job}
        </button>
      </h1>
      {jobs.length > 1 && (
        <label>
          Job{' '}
          <select value={plan.job} onChange={(event) => choose(event.currentTarget.value)}>
            {jobs.map((job) => (
              <option key={job} value={job}>
                {job}
              </option>
            ))}
          </select>
        </label>
      )}
      <button type="button" onClick={print}>
        Print Sheets…
      </button>
    </header>
  );
}
