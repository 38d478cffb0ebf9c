import type { Finding, Related, Severity, Source, Text } from '@dryfit/engine';

/** What a check of the language puts into its findings. */
export interface Reported {
  readonly source: Source;
  /** What is wrong and why. */
  readonly message: Text;
  /** What to do about it. */
  readonly cure: Text;
  readonly related?: readonly Related[];
  readonly parts?: readonly string[];
  readonly data?: Finding['data'];
}

/** A check of the language: its name, its severity, and the findings it makes. */
export interface Reporter {
  readonly code: string;
  readonly severity: Severity;
  (reported: Reported): Finding;
}

/** The check of a name: a function that puts name and severity on what was found. */
export function reporter(code: string, severity: Severity): Reporter {
  const report = ({ source, message, cure, related = [], parts, data }: Reported): Finding => ({
    code,
    severity,
    message,
    cure,
    source,
    related,
    about: parts === undefined ? {} : { parts },
    ...(data === undefined ? {} : { data }),
  });
  return Object.assign(report, { code, severity });
}
