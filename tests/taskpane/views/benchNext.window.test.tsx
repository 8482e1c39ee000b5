import { describe, expect, it } from 'vitest';
import { benchWindow, drawn, FINE, GOOD } from './benchWindow.ts';

const { atBench, say, read, name, word, radio, text, until, button, element, labelled } = benchWindow();

const QUESTION = 'is not on record. Go on without it?';

async function onRecord() {
  const made = await atBench();
  made.session.home.value = 'here';
  await say(FINE);
  await name('NF2001');
  await read(GOOD);
  button('Record this test').click();
  await until(() => expect(made.done.appended).toHaveLength(1));
  await drawn();
  return made;
}

/** A key that the browser sends again and again while it is held. */
function held(at: HTMLElement, key: string): boolean {
  return at.dispatchEvent(
    new KeyboardEvent('keydown', { key, repeat: true, bubbles: true, cancelable: true }),
  );
}

describe('the next battery', () => {
  it('leaves the line for the case in sight until another battery is named', async () => {
    const { session } = await onRecord();
    const line = element().querySelector('.caseLine code')!.textContent!;
    expect(line).toMatch(/^made \?, tested 2026-06-30, 12\.80 V, 1100 A, Serviceable/);
    expect(document.activeElement).toBe(button('Next battery'));
    button('Next battery').click();
    await drawn();
    expect(word()).toBeUndefined();
    expect(text()).toContain('Line for the case of NF2001, which is on record');
    expect(element().querySelector('.caseLine code')!.textContent).toBe(line);
    expect(session.notice.value?.text).toBe('NF2001 is on record: sheet Tests, row 2.');
    await say(FINE);
    expect(text()).toContain(line);
    await name('NF2002');
    expect(text()).not.toContain(line);
    expect(session.notice.value).toBeUndefined();
  });

  it('comes without a question where the test is on record, or nothing was read', async () => {
    await onRecord();
    button('Next battery').click();
    await drawn();
    await say(FINE);
    await name('NF2002');
    button('Next battery').click();
    await drawn();
    expect(text()).not.toContain(QUESTION);
    expect(labelled<HTMLInputElement>('Serial, or the').value).toBe('');
  });

  it.each([
    ['readings', async () => read({ restVolts: '12.4' })],
    ['damage that was seen', async () => say({ posts: 'yes' })],
    ['frost', async () => say({ ...FINE, frost: 'yes' })],
  ])('asks before it leaves out %s, and stays where that is said', async (_, done) => {
    const { session } = await atBench();
    await say({ case: 'no' });
    await name('NF2001');
    await done();
    button('Next battery').click();
    await drawn();
    expect(text()).toContain(`What was read at NF2001 ${QUESTION}`);
    await until(() => expect(document.activeElement?.id).toBe('question'));
    button('Stay with this battery').click();
    await until(() => expect(document.activeElement).toBe(button('Next battery')));
    expect(text()).not.toContain(QUESTION);
    expect(session.bench.form.value.identity).toBe('NF2001');
    button('Next battery').click();
    await drawn();
    button('Go on, without a record').click();
    await until(() => expect(document.activeElement).toBe(radio('case', 'yes')));
    expect(session.bench.form.value).toMatchObject({ identity: '', answers: {} });
    expect(session.bench.form.value.readings.restVolts).toBe('');
  });

  it('is not asked for by a key that is held, nor by the second click of a double click', async () => {
    const { session } = await onRecord();
    const next = button('Next battery');
    expect(held(next, 'Enter')).toBe(false);
    next.dispatchEvent(new MouseEvent('click', { detail: 2, bubbles: true }));
    await drawn();
    expect(word()).toBe('Serviceable');
    expect(session.bench.form.value.identity).toBe('NF2001');
  });

  it('is not answered by a key that is held: one n is one answer', async () => {
    const { session } = await atBench();
    const key = { key: 'n', bubbles: true, cancelable: true };
    radio('case', 'yes')!.dispatchEvent(new KeyboardEvent('keydown', key));
    await drawn();
    held(radio('posts', 'yes')!, 'n');
    await drawn();
    expect(session.bench.form.value.answers).toEqual({ case: 'no' });
  });
});

describe('what is typed', () => {
  it.each([
    [
      { restVolts: '1260' },
      'Rest voltage, V is 1260; allowed is 6 to 16 V',
      'written like 12.60, not 1260 and not 12600 mV',
    ],
    [{ hoursAtRest: '-1' }, 'Hours at rest is -1; allowed is 0 to 87600', ''],
    [
      { loadVolts: '990' },
      'Load-test end, V is 990; allowed is 0 to 16 V',
      'written like 9.60, not 960 and not 9600 mV',
    ],
    [
      { reading: '9.9' },
      'Cranking reading, A is 9.9; allowed is 0, or 16 to 10000 A',
      'go into the field for them',
    ],
  ])('%j is refused in its field, and nothing is judged', async (wrong, said, how) => {
    const { done } = await atBench();
    await say(FINE);
    await name('NF2001');
    await read({ ...GOOD, ...wrong });
    const alert = element().querySelector('.field [role=alert]')!.textContent!;
    expect(alert).toContain(said);
    expect(alert).toContain(how);
    expect(word()).toBeUndefined();
    expect(done.appended).toEqual([]);
  });

  it('in amperes and in volts says which of the two is judged', async () => {
    await atBench();
    await say(FINE);
    await name('NF2001');
    await read({ ...GOOD, loadVolts: '9.2' });
    expect(word()).toBe('Serviceable');
    expect(text()).toContain('Judged by the reading in amperes; the load-test volts, 9.2 V, go on record');
  });

  it('without a rest voltage in the cold says what is not known', async () => {
    await atBench();
    await say(FINE);
    await name('NF2001');
    await read({ celsius: '-25', reading: '1100', least: '980' });
    expect(word()).toBeUndefined();
    await say({ frost: 'no' });
    expect(word()).toBe('Serviceable');
    const said = element().querySelector('.verdict')!.textContent!;
    expect(said).toContain('though its rest voltage was not given');
    expect(said).toContain('was answered, not measured');
  });
});
