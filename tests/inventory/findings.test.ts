import { describe, expect, it } from 'vitest';
import type { FindingKind } from '../../src/inventory/findingKinds.ts';
import { FINDING_KINDS } from '../../src/inventory/findingKinds.ts';
import type { Inventory } from '../../src/inventory/inventory.ts';
import { settingsSchema } from '../../src/inventory/settings.ts';
import { codeExamples } from './codeExamples.ts';
import { dateExamples } from './dateExamples.ts';
import type { Example, Examples } from './examples.ts';
import { placeExamples } from './placeExamples.ts';
import { readingExamples } from './readingExamples.ts';
import { accounted, found, inventoryFrom, sheetOf } from './sheets.ts';

const examples: Examples = { ...codeExamples, ...dateExamples, ...placeExamples, ...readingExamples };
const kinds = Object.keys(FINDING_KINDS) as FindingKind[];

function read(example: Example): Inventory {
  if (!('rows' in example)) return inventoryFrom(example);
  const { rows, settings, tests, charges, ...more } = example;
  return inventoryFrom(sheetOf(rows, more), {
    ...(settings === undefined ? {} : { settings }),
    ...(tests === undefined ? {} : { tests: sheetOf(tests, { name: 'Tests' }) }),
    ...(charges === undefined ? {} : { charges: sheetOf(charges, { name: 'Charges' }) }),
  });
}

const settingKeys = Object.keys(settingsSchema.shape);
// Keys that are no plain word; those that are stand behind the word setting.
const BARE_KEY = new RegExp(
  `\\bsetting\\b|\\b(${settingKeys.filter((key) => /[A-Z]/.test(key)).join('|')})\\b`,
);

describe('each kind of finding', () => {
  it('has examples', () => {
    expect(Object.keys(examples).sort()).toEqual([...kinds].sort());
  });

  for (const kind of kinds) {
    it(`${kind}: is found where it is`, () => {
      for (const example of examples[kind]!.yes) {
        const inventory = read(example);
        expect(found(inventory, kind).length).toBeGreaterThan(0);
        expect(accounted(inventory)).toBe(inventory.rows.read);
        for (const { given, done, row, setting } of found(inventory, kind)) {
          expect(given).not.toBe('');
          expect(done).not.toBe('');
          expect(row).toBeGreaterThan(0);
          expect(`${given} ${done}`).not.toMatch(BARE_KEY);
          if (setting !== undefined) expect(settingKeys).toContain(setting.split('.')[0]);
        }
      }
    });

    it(`${kind}: is not found where it is not`, () => {
      for (const example of examples[kind]!.no) expect(found(read(example), kind)).toEqual([]);
    });
  }
});
