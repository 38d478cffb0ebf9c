import { CHECK_FAILED, checkCodes, checkSeverities, type Finding, type Severity, UNUSED_SILENCE } from '@dryfit/engine';
import { languageChecks } from '../checks/index.js';
import { UNREAD } from './follow-ons.js';
import { nearest } from './nearest.js';

/** What a house makes of a check: how grave its findings are taken to be, or that they are not told. */
export type WantedSeverity = Severity | 'off';
export const WANTED_SEVERITIES: readonly WantedSeverity[] = ['error', 'warning', 'info', 'off'];

/** By the name of the check. */
export type Severities = Readonly<Record<string, WantedSeverity>>;

/** Their findings mean that others are missing, so they stay what they are. */
const FIXED: readonly string[] = [...UNREAD, CHECK_FAILED];

/** Every name that a finding can have. */
export const checkNames: readonly string[] = [
  ...new Set([...checkCodes, ...languageChecks.map(({ code }) => code), UNUSED_SILENCE, CHECK_FAILED]),
].sort();

/**
 * Findings as grave as a house takes them. An error may be made milder and is never left out: what cannot be made is
 * allowed in the text alone, with its reason.
 */
export function withSeverities(findings: readonly Finding[], wanted: Severities): readonly Finding[] {
  if (Object.keys(wanted).length === 0) return findings;
  return findings.flatMap((finding) => {
    const severity = Object.hasOwn(wanted, finding.code) ? wanted[finding.code] : undefined;
    if (severity === undefined || severity === finding.severity || FIXED.includes(finding.code)) return [finding];
    if (severity === 'off') return finding.severity === 'error' ? [finding] : [];
    return [{ ...finding, severity, asFound: finding.severity }];
  });
}

/** What of such wishes cannot be followed, and why. */
export function troublesOf(wanted: Severities): readonly string[] {
  return Object.entries(wanted).flatMap(([name, severity]) => {
    if (!checkNames.includes(name)) {
      const meant = nearest(name, checkNames);
      return [`there is no check called ${name}${meant === undefined ? '' : `; did you mean ${meant}?`}`];
    }
    if (FIXED.includes(name) && severity !== 'error') {
      return [`${name} stays an error: where it is found, other findings are missing`];
    }
    if (severity === 'off' && isError(name)) {
      const instead = ALLOWABLE.has(name) ? `, or write allow ${name} "why" where it is meant` : '';
      return [`${name} finds what cannot be made and is not turned off; make it a warning or info${instead}`];
    }
    return [];
  });
}

const ALLOWABLE = new Set(checkCodes);
const OWN = new Map(languageChecks.map(({ code, severity }) => [code, severity]));
const isError = (name: string): boolean => (checkSeverities.get(name) ?? OWN.get(name)) === 'error';
