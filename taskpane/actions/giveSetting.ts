import type { Problem } from '../../src/basics/outcome.ts';
import { settingsFrom } from '../../src/inventory/settings.ts';
import type { SettingPath } from '../givenSettings.ts';
import { withSetting } from '../givenSettings.ts';
import type { Session } from '../session.ts';

/**
 * Takes a setting that the user gives; one that is not allowed is refused and changes nothing.
 * @param path   its key, dotted such as money.unitPrice, or its keys one by one
 * @param value  its value; undefined = its default again
 * @returns what is wrong with it, or undefined
 */
export function giveSetting({ given }: Session, path: SettingPath, value: unknown): Problem | undefined {
  const next = withSetting(given.value, path, value);
  const checked = settingsFrom(next);
  if (!checked.ok) return checked.problem;
  given.value = next;
  return undefined;
}
