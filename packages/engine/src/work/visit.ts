import { type Setting, settingKey } from './setting.js';

/** A setting, and the stage of the work it is set up for: one setting may have to be set up again for a later stage. */
export interface Visit {
  readonly setting: Setting;
  readonly stage: number;
}

/** Two visits with one key are the same. */
export const visitKey = ({ setting, stage }: Visit): string => `${stage}; ${settingKey(setting)}`;

/** Operations of a stage that can be set up in the same ways are one class: its visits, by their keys. */
export type Class = ReadonlyMap<string, Visit>;

export const keyed = (visits: readonly Visit[]): Map<string, Visit> =>
  new Map(visits.map((visit): [string, Visit] => [visitKey(visit), visit]));
