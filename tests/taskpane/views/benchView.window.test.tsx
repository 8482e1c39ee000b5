import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '../../../src/cranking/cautions.ts';
import { benchSheet } from './benchSheets.ts';
import { benchWindow, drawn, FINE, GOOD, LABELS } from './benchWindow.ts';

const { atBench, say, read, name, word, radio, element, text, until, labelled, button, give } = benchWindow();

describe('the cautions of the bench', () => {
  it('stand at the step that they belong to', async () => {
    await atBench();
    const cautionsOf = (heading: string): string =>
      [...element().querySelectorAll('section.step, details.charge')]
        .find((step) => step.querySelector('h3, summary')?.textContent === heading)!
        .querySelector('.cautions')!.textContent!;
    expect(cautionsOf('Look first')).toBe(CAUTIONS.acid);
    expect(cautionsOf('Alone?')).toBe(CAUTIONS.groundCable + CAUTIONS.shortCircuit + CAUTIONS.lifting);
    expect(cautionsOf('Which battery, and what it reads')).toBe(CAUTIONS.loadTest);
    expect(cautionsOf('Charged it?')).toBe(
      CAUTIONS.chargingAir + CAUTIONS.chargingAlone + CAUTIONS.neverCharge,
    );
    await say(FINE);
    await read({ ...GOOD, restVolts: '12.1' });
    expect(cautionsOf('Frost')).toBe(CAUTIONS.frozen);
    await say({ frost: 'yes' });
    expect(cautionsOf('The answer')).toContain(CAUTIONS.localRules);
    await say({ posts: 'yes' });
    expect(cautionsOf('The answer')).toContain(CAUTIONS.shipping);
  });

  it('ask about frost under 12.2 V, without a temperature, and nowhere else', async () => {
    await atBench();
    await say(FINE);
    await read(GOOD);
    expect(radio('frost', 'yes')).toBeNull();
    await read({ restVolts: '12.19' });
    expect(radio('frost', 'yes')).not.toBeNull();
    expect(word()).toBeUndefined();
    await read({ restVolts: '12.2' });
    expect(radio('frost', 'yes')).toBeNull();
    await read({ celsius: '' });
    expect(radio('frost', 'yes')).not.toBeNull();
    // What was once said of frost stays in sight, whatever is read later.
    await say({ frost: 'yes' });
    await read({ celsius: '20' });
    expect(radio('frost', 'yes')?.checked).toBe(true);
    expect(word()).toBe('Not judged');
  });
});

const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => value.toFixed(2));
const yesNo = fc.constantFrom('yes', 'no', undefined);
const anyReads = fc.record({
  restVolts: fc.oneof(number(6, 16), fc.constant('')),
  hoursAtRest: fc.constantFrom('', '1', '3', '8'),
  celsius: fc.oneof(number(-40, 60), fc.constant('')),
  reading: fc.oneof(number(100, 1500), fc.constant('')),
  least: fc.constantFrom('980', '500', ''),
});
const anything = fc.record({
  reads: anyReads,
  retest: fc.constantFrom('0', '1', '2'),
  construction: fc.constantFrom('', 'AGM', 'flooded', 'gel'),
  serial: fc.constantFrom('NF2001', 'NF2006', 'unknown'),
});

describe('what a battery can’t be talked into', () => {
  const cases = [
    ['damaged', { case: 'yes' }, {}, ['Condemned']],
    ['hot', { heat: 'yes' }, {}, ['Not judged']],
    ['in its set', { alone: 'no' }, {}, ['Not judged']],
    ['in frost', { frost: 'yes' }, {}, ['Not judged', undefined]],
    ['on charge', {}, { restVolts: '14.2', celsius: '15' }, ['Not judged', undefined]],
    ['frozen by its volts', {}, { restVolts: '11.4', celsius: '-35' }, ['Not judged', undefined]],
  ] as const;

  it.each(cases)('%s: any readings, any retest, a full charge on record', async (_, said, reads, words) => {
    const { session } = await atBench();
    session.home.value = 'here';
    const charged = { chargedOn: session.asOf.value + 0.5 };
    session.bench.before.value = new Map(['NF2001', 'NF2006', 'UNKNOWN'].map((each) => [each, charged]));
    await fc.assert(
      fc.asyncProperty(anything, yesNo, async (drawnFor, frost) => {
        button('Next battery').click();
        await drawn();
        if (session.question.value !== undefined) button('Go on, without a record').click();
        await drawn();
        await say(FINE);
        await name(drawnFor.serial);
        await read({ ...drawnFor.reads, ...reads });
        give('This is', drawnFor.retest);
        give('Construction', drawnFor.construction);
        await drawn();
        await say({ frost, ...said });
        expect(words).toContain(word());
      }),
      { numRuns: 25, seed: 6 },
    );
  });
});

describe('a record of the bench', () => {
  it('asks where to write, and writes nothing where that is declined', async () => {
    const { session, done } = await atBench();
    await say(FINE);
    await name('nf2001');
    await read(GOOD);
    button('Record this test').click();
    await until(() => expect(text()).toContain('Where shall Crankbook write?'));
    button('Write nothing now').click();
    await drawn();
    expect(done.appended).toEqual([]);
    expect(session.bench.recorded.value.tests).toBe(0);
    button('Record this test').click();
    await drawn();
    button('Into this workbook').click();
    await until(() => expect(done.appended).toHaveLength(1));
    expect(done.appended[0]!.sheet).toBe('Tests');
    expect(done.appended[0]!.cells.slice(1, 6)).toEqual(['NF2001', 'NF-1', '', 'no', 12.8]);
    expect(button('On record').getAttribute('aria-disabled')).toBe('true');
    button('On record').click();
    await drawn();
    expect(done.appended).toHaveLength(1);
  });

  it('needs a serial, and says so at the field', async () => {
    const { done } = await atBench();
    await say(FINE);
    await read(GOOD);
    button('Record this test').click();
    await until(() => expect(labelled('Serial, or the text').getAttribute('aria-invalid')).toBe('true'));
    expect(document.activeElement).toBe(labelled('Serial, or the text'));
    expect(done.appended).toEqual([]);
  });

  it('goes into a workbook of its own where that was said, by a button', async () => {
    const { session, done } = await atBench();
    session.home.value = 'own';
    await say(FINE);
    await name('NF2002');
    await read(GOOD);
    button('Record this test').click();
    await until(() => expect(text()).toContain('One record is kept in this pane'));
    labelled<HTMLInputElement>('It reached full charge').click();
    await drawn();
    button('Record this charge').click();
    await until(() => expect(text()).toContain('2 records are kept in this pane: nothing is written'));
    button('Take the records as a workbook').click();
    await until(() => expect(done.workbooks).toHaveLength(1));
    const [{ fileName, sheets }] = done.workbooks as [(typeof done.workbooks)[number]];
    expect(fileName).toBe('inventory bench records.xlsx');
    expect(sheets.map(({ name, rows }) => [name, rows.length, rows[1]![1]!.value])).toEqual([
      ['Tests', 2, 'NF2002'],
      ['Charges', 2, 'NF2002'],
    ]);
    expect(sheets[1]!.rows[1]![3]!.value).toBe('yes');
    expect(done.appended).toEqual([]);
    await until(() => expect(text()).not.toContain('kept in this pane: nothing is written'));
  });

  it('keeps for the next battery what stays the same, and nothing else', async () => {
    await atBench();
    await say(FINE);
    await name('NF2001');
    await read(GOOD);
    give('Tester used', 'tester 2');
    give('Initials', 'CD');
    give('Construction', 'gel');
    button('Next battery').click();
    await drawn();
    button('Go on, without a record').click();
    await drawn();
    const stands = [
      ...Object.values(LABELS),
      'Tester used',
      'Initials',
      'Construction',
      'Serial, or the',
    ].map((label) => labelled<HTMLInputElement>(label).value);
    expect(stands).toEqual(['', '', '15', '', '', '980', 'tester 2', 'CD', 'gel', '']);
    expect(element().querySelector('.bench input:checked:not([type=checkbox])')).toBeNull();
  });
});

describe('the battery on the bench', () => {
  it('is known by its serial, with its place and its set', async () => {
    await atBench();
    await say(FINE);
    await name('NF2001');
    await read({ ...GOOD, restVolts: '12.5', reading: '' });
    expect(element().querySelector('.known')!.textContent).toContain('NF-1');
    expect(text()).toContain('coldest at its place -33 C');
    expect(element().querySelector('table caption')!.textContent).toContain('NF-1');
    expect(text()).not.toContain('Renew the whole set');
    await say({ case: 'yes' });
    expect(text()).toContain('Renew the whole set and test its mate for stock');
    expect(text()).toContain('Never fit a flooded one to it');
  });

  it('is told where its set mixes constructions, and where nobody knows it', async () => {
    await atBench();
    await say(FINE);
    await name('NF2003');
    await read(GOOD);
    expect(text()).toContain('This set mixes AGM and flooded');
    await name('NF9999');
    expect(text()).toContain('This serial is not in the inventory');
  });

  it('that stands in several rows is told of, with what a record would do', async () => {
    const twice = {
      ...benchSheet,
      rows: [
        ...benchSheet.rows,
        [...benchSheet.rows[1]!.slice(0, 3), 'NF-9', ...benchSheet.rows[1]!.slice(4)],
      ],
    };
    await atBench(twice);
    await say(FINE);
    await name('NF2001');
    expect(text()).toContain('Several rows have this serial (2, 8), and nothing tells them apart');
    expect(text()).toContain('counts for each of them');
  });

  it('that its label names otherwise is told of', async () => {
    await atBench();
    await say(FINE);
    await name('0324-117');
    expect(text()).toContain('the symbol "0324-117" names no serial; scan the other symbol of the label');
  });

  it('is taken from the row that is selected, and not from a head', async () => {
    const { session } = await atBench();
    const at = (row: number) => ({ sheet: 'Batteries', block: { row, column: 0, rows: 1, columns: 1 } });
    const info = await session.host.workbook();
    if (!info.ok) throw new Error('no workbook');
    const standing = (row: number) => async () => ({ ...info, value: { ...info.value, selected: at(row) } });
    Object.assign(session.host, { workbook: standing(3) });
    button('Take the row').click();
    await until(() => expect(labelled<HTMLInputElement>('Serial, or the').value).toBe('NF2003'));
    Object.assign(session.host, { workbook: standing(0) });
    button('Take the row').click();
    await until(() => expect(session.notice.value?.kind).toBe('problem'));
  });
});
