import { describe, expect, it } from 'vitest';
import { problem } from '../../../src/basics/outcome.ts';
import { CHARGE_HEADS, TEST_HEADS } from '../../../src/inventory/benchRecord.ts';
import { AS_OF } from '../paneSession.ts';
import { benchWindow, drawn, FINE, GOOD } from './benchWindow.ts';

const { atBench, say, read, name, text, until, button, give, labelled } = benchWindow();

/** What a row says under its heads, without what it leaves empty. */
const told = (heads: readonly string[], cells: readonly unknown[]) =>
  Object.fromEntries(heads.map((head, column) => [head, cells[column]]).filter(([, cell]) => cell !== null));

describe('a row that goes on record', () => {
  it('of a test holds all that was said, read and judged, each under its head', async () => {
    const { session, done } = await atBench();
    session.home.value = 'here';
    Object.assign(session, { timeOfDay: () => 0.5 });
    await say(FINE);
    await name('NF2001');
    await read({ ...GOOD, reading: '900', loadVolts: '9.2' });
    give('Tester used', 'tester 2');
    give('Initials', 'CD');
    await drawn();
    button('Record this test').click();
    await until(() => expect(done.appended).toHaveLength(1));
    expect(told(TEST_HEADS, done.appended[0]!.cells)).toEqual({
      ...{ Date: AS_OF + 0.5, Serial: 'NF2001', Vehicle: 'NF-1', 'Place in the set': '', Damage: 'no' },
      ...{ 'Rest volts': 12.8, 'Hours at rest': 8, 'Temperature C': 15, Reading: 900, 'Load volts': 9.2 },
      ...{ Least: 980, Verdict: 'Awaiting charge', 'Tester used': 'tester 2', Initials: 'CD' },
      Reason: expect.stringMatching(
        /^The reading 900 A is under the least accepted, 980 A: failed once\. Full charge by itself.*Judged by the reading in amperes/,
      ),
    });
  });

  it('of a charge says whether it was full, by which charger and by whom', async () => {
    const { session, done } = await atBench();
    session.home.value = 'here';
    await say(FINE);
    await name('NF2002');
    give('Initials', 'CD');
    give('Charger used', 'charger 4');
    await drawn();
    button('Record this charge').click();
    await until(() => expect(done.appended).toHaveLength(1));
    expect([done.appended[0]!.sheet, told(CHARGE_HEADS, done.appended[0]!.cells)]).toEqual([
      'Charges',
      {
        ...{ Date: AS_OF, Serial: 'NF2002', Vehicle: 'NF-1', 'Fully charged': 'no' },
        ...{ 'Charger used': 'charger 4', Initials: 'CD' },
      },
    ]);
    labelled<HTMLInputElement>('It reached full charge').click();
    await drawn();
    button('Record this charge').click();
    await until(() => expect(done.appended).toHaveLength(2));
    expect(done.appended[1]!.cells[3]).toBe('yes');
  });

  it('is not on record where its sheet is protected: that is told, and all that was typed stands', async () => {
    const { session, done } = await atBench();
    session.home.value = 'here';
    const { appendRow } = session.host;
    Object.assign(session.host, {
      appendRow: async () => problem('badInput', 'sheetProtected', 'sheet', 'Tests'),
    });
    await say(FINE);
    await name('NF2001');
    await read(GOOD);
    button('Record this test').click();
    await until(() => expect(session.notice.value?.kind).toBe('problem'));
    expect(session.notice.value!.text).toMatch(/^the sheet "Tests" is protected/);
    expect(text()).toContain('On record from this bench: 0 tests, 0 charges.');
    button('Next battery').click();
    await drawn();
    expect(text()).toContain('What was read at NF2001 is not on record.');
    button('Stay with this battery').click();
    await drawn();
    Object.assign(session.host, { appendRow });
    button('Record this test').click();
    await until(() => expect(done.appended).toHaveLength(1));
    expect(done.appended[0]!.cells[5]).toBe(12.8);
  });
});
