import { describe, expect, it } from 'vitest';
import { FIELD_SPECS, FIELDS } from '../../src/inventory/fields.ts';
import { headerMatches, headerWords } from '../../src/inventory/headerWords.ts';
import { causeReading } from '../../src/inventory/removalCauses.ts';
import { statusMeaning } from '../../src/inventory/statusWords.ts';
import { constructionIn } from '../../src/inventory/constructionColumn.ts';

describe('header words', () => {
  it.each([
    ['InstallDate', 'install date'],
    ['install_date', 'install date'],
    ['S/N', 's n'],
    ['Veh. #', 'veh no'],
    ['  Température  ', 'temperature'],
    [null, ''],
  ])('%j is "%s"', (header, words) => {
    expect(headerWords(header)).toBe(words);
  });

  it.each([
    ['Date fitted', 'installed'],
    ['In svc', 'installed'],
    ['Battery in service date', 'installed'],
    ['S/N', 'serial'],
    ['Battery serial no.', 'serial'],
    ['NSN', 'stockNumber'],
    ['Mfg code', 'code'],
    ['Date of manufacture', 'made'],
    ['OCV (V)', 'restVolts'],
    ['Rest voltage, V', 'restVolts'],
    ['CCA meas.', 'reading'],
    ['Rated CCA', 'rating'],
    ['Min CCA', 'least'],
    ['Loc', 'site'],
    ['Veh reg', 'vehicle'],
    ['Cause of removal', 'cause'],
    ['Date removed from vehicle', 'removed'],
    ['first_seen_date', 'watchedSince'],
    ['Last charge', 'chargedOn'],
    ['Volts under load', 'loadVolts'],
    ['Place in the set', 'place'],
    ['Price paid', 'pricePaid'],
  ] as const)('%s names %s first', (header, field) => {
    expect(headerMatches(header)[0]?.field).toBe(field);
  });

  it.each([
    'Remarks',
    'Removed by',
    'Vehicle type',
    'Next test date',
    'entry_age',
    'Warranty until',
    'Mileage',
    'Notes on damage',
    '',
  ])('%s names no field', (header) => {
    expect(headerMatches(header)).toEqual([]);
  });

  it('name each field by its own label', () => {
    for (const field of FIELDS) {
      expect(headerMatches(FIELD_SPECS[field].label).map((match) => match.field)).toContain(field);
    }
  });

  it('are kept in the one form in which headers are compared', () => {
    for (const field of FIELDS) {
      for (const words of [...FIELD_SPECS[field].headers, ...FIELD_SPECS[field].within])
        expect(headerWords(words)).toBe(words);
    }
  });
});

describe('a removal cause', () => {
  it.each([
    ['failed', 'failed', 'words'],
    ['Dead cell', 'failed', 'words'],
    ["won't hold charge", 'failed', 'words'],
    ['would not crank', 'failed', 'words'],
    ['U/S', 'failed', 'words'],
    ['sulphated', 'failed', 'words'],
    ['vehicle sold', 'good', 'words'],
    ['mate of failed battery', 'good', 'words'],
    ['renewed as a set', 'good', 'words'],
    ['planned', 'good', 'words'],
    ['stolen', 'good', 'words'],
    ['no fault found', 'good', 'words'],
    ['other', 'good', 'words'],
    ['case cracked', 'damaged', 'words'],
    ['accident', 'damaged', 'words'],
    ['leaking', 'damaged', 'words'],
    ['', 'notSaid', 'words'],
    ['unknown', 'notSaid', 'words'],
    ['???', 'notSaid', 'words'],
    ['zebra', 'good', 'rest'],
  ] as const)('"%s" means %s, by %s', (text, meaning, by) => {
    expect(causeReading(text, {})).toEqual({ meaning, by });
  });

  it('means what the settings say, in any case of letters', () => {
    expect(causeReading('Zebra', { zebra: 'failed' })).toEqual({ meaning: 'failed', by: 'settings' });
    expect(causeReading('failed', { failed: 'notSaid' })).toEqual({ meaning: 'notSaid', by: 'settings' });
  });
});

describe('a status', () => {
  it.each([
    ['In service', 'inService'],
    ['in_service', 'inService'],
    ['fitted', 'inService'],
    ['Laid up', 'parked'],
    ['in stock', 'inStock'],
    ['spare', 'inStock'],
    ['Removed', 'removed'],
    ['out of service', 'removed'],
    ['turned in', 'removed'],
    ['not in use', 'removed'],
    ['failed', 'perhapsRemoved'],
    ['serviceable', 'condition'],
    ['condemned', 'condition'],
    ['', 'nothing'],
    ['qwerty', 'unknown'],
  ] as const)('"%s" says %s', (text, meaning) => {
    expect(statusMeaning(text)).toBe(meaning);
  });
});

describe('words of a construction', () => {
  it.each([
    ['6T AGM', 'AGM'],
    ['6T, flooded', 'flooded'],
    ['12 V gel 100 Ah', 'gel'],
    ['6T', undefined],
    ['AGM (replaces flooded)', undefined],
  ] as const)('"%s" say %s', (text, construction) => {
    expect(constructionIn(text)).toBe(construction);
  });
});
