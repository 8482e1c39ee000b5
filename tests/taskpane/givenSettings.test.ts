import { expect, it } from 'vitest';
import { settingAt, withSetting } from '../../taskpane/givenSettings.ts';

it('a dotted path is written without touching what stands beside it', () => {
  const given = { years: 3, money: { unitPrice: 400, currency: 'EUR' } };
  expect(withSetting(given, 'money.unitPrice', 450)).toEqual({
    years: 3,
    money: { unitPrice: 450, currency: 'EUR' },
  });
  expect(given.money.unitPrice).toBe(400);
  expect(withSetting({}, 'policy.age', 48)).toEqual({ policy: { age: 48 } });
  expect(withSetting({ policy: 'failure' }, 'policy.age', 48)).toEqual({ policy: { age: 48 } });
});

it('undefined takes the key out', () => {
  expect(withSetting({ years: 3, recovered: 0.2 }, 'recovered', undefined)).toEqual({ years: 3 });
  expect(withSetting({ money: { unitPrice: 4 } }, 'money.unitPrice', undefined)).toEqual({ money: {} });
});

it('reads what a path leads to', () => {
  expect(settingAt({ money: { unitPrice: null } }, 'money.unitPrice')).toBeNull();
  expect(settingAt({ policy: 'failure' }, 'policy.age')).toBeUndefined();
});
