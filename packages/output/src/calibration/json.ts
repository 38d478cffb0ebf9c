import type { Finding, FittedJoint, Half, MeasuredLength, Rational } from '@dryfit/engine';
import { exact, known } from '../fit-json/lengths.js';
import { printText } from '../print/length.js';
import { baseLine, kerfLine, plungeLine } from './lines.js';
import type { CalibrationReport, StopReport } from './report.js';
import type { CalibrationJson } from './schema.js';
import { stopLine } from './stop.js';

/** What a test joint tells of a machine, as data; nothing is rounded but what is to be written. */
export function calibrationJson(report: CalibrationReport): CalibrationJson {
  const { machine, base, depth } = report;
  return known<CalibrationJson>({
    format: 'dryfit-calibration',
    version: 1,
    machine: machine.name,
    described: report.place,
    set: base && exact(report.set),
    measuredWithin: exact(report.within),
    base: base && found(base.found),
    width: base?.from === 'walls' ? found(base.kerf) : undefined,
    depth:
      depth &&
      known<NonNullable<CalibrationJson['depth']>>({
        connector: depth.connector.name,
        closes: depth.found === undefined,
        deeper: depth.found && found(depth.found.off),
        short: depth.found && exact(depth.found.short),
      }),
    stop: report.stop && stopJson(report.stop),
    write: [baseLine(report), kerfLine(report), plungeLine(report), stopLine(report)].filter(
      (line) => line !== undefined,
    ),
    cabinets: report.cabinets.map(({ label, moves }) => ({
      cabinet: printText(label, { units: 'mm' }),
      slots: moves.halves.map(({ joint, half, to }) => movedJson(joint, half, to)),
      found: codes(moves.found),
      cured: codes(moves.cured),
    })),
  });
}

function stopJson({ jig, place, set, found: off, moved }: StopReport): NonNullable<CalibrationJson['stop']> {
  return known<NonNullable<CalibrationJson['stop']>>({
    jig: jig.name,
    described: place,
    set: exact(set),
    farther: found(off),
    cabinets: moved.map(({ label, moves }) => ({
      cabinet: printText(label, { units: 'mm' }),
      slots: moves.halves.map(({ joint, half, really }) => movedJson(joint, half, really)),
      askew: moves.askew.map(({ part, by }) => ({ part, by: exact(by) })),
    })),
  });
}

const movedJson = (joint: FittedJoint, half: Half, to: Rational) => ({
  joint: joint.id,
  part: half.part,
  from: exact(half.across),
  to: exact(to),
});

const found = ({ value, within }: MeasuredLength) => ({ value: exact(value), within: exact(within) });
const codes = (findings: readonly Finding[]): string[] => [...new Set(findings.map(({ code }) => code))];
