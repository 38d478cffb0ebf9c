import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DEFAULTS, readSettings } from '../../packages/language/src/server/settings.js';
import { manifest, root } from './manifest.js';

const { properties } = manifest.contributes.configuration;
const ours = Object.entries(properties).filter(([name]) => name !== 'dryfit.trace.server');

/** A value at a path of names with dots, in an object. */
function put(into: Record<string, unknown>, [first = '', ...rest]: readonly string[], value: unknown): void {
  if (rest.length === 0) {
    into[first] = value;
    return;
  }
  const inner = (into[first] ?? {}) as Record<string, unknown>;
  into[first] = inner;
  put(inner, rest, value);
}

test('the defaults are those of the server', () => {
  const given: Record<string, unknown> = {};
  for (const [name, setting] of ours) put(given, name.split('.').slice(1), setting.default);
  expect(given).toEqual(DEFAULTS);
});

test.each(ours)('the server takes another value of %s', (name, setting) => {
  const other = setting.enum?.find((word) => word !== setting.default) ?? otherThan(setting.default);
  const given: Record<string, unknown> = {};
  put(given, name.split('.').slice(1), other);
  expect(readSettings(given)).not.toEqual(DEFAULTS);
});

const otherThan = (value: unknown): unknown => (typeof value === 'boolean' ? !value : { 'ends-differ': 'info' });

test.each(Object.entries(properties))('%s is described, and each of its words', (_, setting) => {
  expect(setting.markdownDescription).toMatch(/^[A-Z].*\.$|`$/s);
  expect(setting.enumDescriptions?.length ?? 0).toBe(setting.enum?.length ?? 0);
});

test('the setting of severities knows every check that has a page', () => {
  const pages = ['engine', 'language'].flatMap((name) =>
    readdirSync(join(root, `packages/${name}/src/checks`))
      .filter((file) => file.endsWith('.md'))
      .map((file) => file.slice(0, -'.md'.length)),
  );
  const checks = properties['dryfit.severity']?.properties ?? {};
  expect(Object.keys(checks)).toEqual(pages.sort());
  expect(Object.values(checks).filter(({ description }) => description.length < 15)).toEqual([]);
});
