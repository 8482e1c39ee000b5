import { describe, expect, it } from 'vitest';
import { benchWindow, drawn, FINE, GOOD } from './benchWindow.ts';

const { atBench, say, read, name, word, text, until, button } = benchWindow();

describe('a record that takes its time', () => {
  /** A workbook that is slow to write: the row stands once it is let. */
  async function slowBench() {
    const made = await atBench();
    made.session.home.value = 'here';
    const { appendRow } = made.session.host;
    let write = (): void => undefined;
    const allowed = new Promise<void>((resolve) => (write = resolve));
    Object.assign(made.session.host, {
      appendRow: async (...asked: Parameters<typeof appendRow>) => {
        await allowed;
        return appendRow(...asked);
      },
    });
    await say(FINE);
    await name('NF2001');
    await read(GOOD);
    return { ...made, write };
  }

  it('is written once, however often its button is pressed', async () => {
    const { session, done, write } = await slowBench();
    for (let press = 0; press < 3; press += 1) {
      button('Record this test').click();
      await drawn();
    }
    write();
    await until(() => expect(session.bench.recorded.value.tests).toBe(1));
    await drawn();
    expect(done.appended).toHaveLength(1);
    expect(button('On record').getAttribute('aria-disabled')).toBe('true');
  });

  it('says nothing of the battery that came after it', async () => {
    const { session, done, write } = await slowBench();
    button('Record this test').click();
    await drawn();
    button('Next battery').click();
    await drawn();
    button('Go on, without a record').click();
    await drawn();
    await say(FINE);
    await name('NF2002');
    await read({ ...GOOD, reading: '300' });
    write();
    await until(() => expect(session.bench.recorded.value.tests).toBe(1));
    await drawn();
    expect(word()).not.toBe('Serviceable');
    expect(button('Record this test').getAttribute('aria-disabled')).toBe('false');
    expect(done.appended.map(({ cells }) => cells[1])).toEqual(['NF2001']);
  });

  it('does not stand for readings that were changed meanwhile', async () => {
    const { session, write } = await slowBench();
    button('Record this test').click();
    await drawn();
    await read({ reading: '300' });
    write();
    await until(() => expect(session.bench.recorded.value.tests).toBe(1));
    await drawn();
    expect(word()).not.toBe('Serviceable');
    expect(button('Record this test').getAttribute('aria-disabled')).toBe('false');
  });
});

describe('a text that names no battery', () => {
  it.each(['NF2001\u0000', ']C1NF-9', '21NF-9\u001d', '=1+1'])('%j is not put on record', async (scanned) => {
    const { session, done } = await atBench();
    session.home.value = 'here';
    await say(FINE);
    await name(scanned);
    await read(GOOD);
    button('Record this test').click();
    await drawn();
    expect(done.appended).toEqual([]);
    expect(document.activeElement?.closest('.identity')).not.toBeNull();
  });

  it.each([
    ['\u0002NF2001\u0003', '<STX> <ETX>'],
    ['NF2001\u001d', '<GS>'],
    [']C1NF2001', ']C1'],
    ['{STX}]A0nf2001{ETX}', '<STX>]A0 <ETX>'],
  ])('%j is NF2001 in what a scanner puts around it, and that is told', async (scanned, frame) => {
    const { session, done } = await atBench();
    session.home.value = 'here';
    await say(FINE);
    await name(scanned);
    await read(GOOD);
    expect(text()).toContain(`Read as NF2001. Taken off: ${frame}, which the scanner`);
    button('Record this test').click();
    await until(() => expect(done.appended).toHaveLength(1));
    expect(done.appended[0]!.cells[1]).toBe('NF2001');
  });
});
