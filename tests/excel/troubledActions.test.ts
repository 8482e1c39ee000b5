import { describe, expect, it } from 'vitest';
import { excelHost } from '../../taskpane/host/excel/excelHost.ts';
import { becauseOf, followed, reportSheet } from '../taskpane/host/contractWorkbook.ts';
import { PROGRAMS } from './hostWindow.ts';
import { stateOf } from './modelState.ts';
import type { Opened } from './paneWriting.ts';
import { ACTIONS, opened } from './paneWriting.ts';
import { emptySheet } from './workbookModel.ts';

const noticeOf = ({ session }: Opened): string => {
  const { kind, text } = session.notice.value ?? { kind: 'done', text: '' };
  return kind === 'done' ? 'done' : text;
};

describe.each(Object.entries(ACTIONS))('%s', (_, action) => {
  it('is refused, with what to do, where sheets and workbook are protected', async () => {
    const found = await opened(action);
    const { workbook } = found.rig;
    workbook.isProtected = true;
    for (const sheet of workbook.sheets) sheet.isProtected = true;
    const before = stateOf(workbook);
    await action.act(found.session);
    expect(noticeOf(found)).toMatch(/protected.*(take the protection off|save a copy)/);
    expect(stateOf(workbook)).toEqual(before);
  });

  it('waits while a cell is being edited', async () => {
    const found = await opened(action);
    found.rig.faults.isEditing = true;
    const done = action.act(found.session);
    setTimeout(() => found.rig.userEndsEdit(), 30);
    await done;
    expect([noticeOf(found), found.rig.traffic.notModelled]).toEqual(['done', []]);
  });

  it.each(['ltsc2021', 'web'] as const)('is done in the program %s', async (name) => {
    const found = await opened(action, PROGRAMS[name]);
    await action.act(found.session);
    expect([noticeOf(found), found.rig.traffic.notModelled]).toEqual(['done', []]);
  });

  it('leaves the workbook as it was, and says what to do, where no request of its size is taken', async () => {
    for (const mostBytes of [6_000, 10_000, 20_000]) {
      const found = await opened(action);
      const before = stateOf(found.rig.workbook);
      found.rig.faults.mostBytes = mostBytes;
      await action.act(found.session);
      found.rig.faults.mostBytes = 5_000_000;
      const said = noticeOf(found);
      if (said === 'done') continue;
      expect(said).toMatch(/choose fewer rows/);
      const { sheets, ...rest } = stateOf(found.rig.workbook);
      // The settings that were written before are told.
      const kept = sheets.filter(({ name }) => !said.includes(`“${name}”`));
      const settled = before.sheets.filter(({ name }) => !said.includes(`“${name}”`));
      expect([mostBytes, kept]).toEqual([mostBytes, settled]);
      expect(rest.events).toBe(true);
    }
  });
});

describe('a program that is too old', () => {
  it('is refused before anything is read or written', async () => {
    const found = await opened(ACTIONS['write the forecast']!);
    const host = excelHost();
    const before = stateOf(found.rig.workbook);
    const { requirements } = Office.context;
    const asked = requirements.isSetSupported;
    requirements.isSetSupported = (name, version) => !(name === 'ExcelApi' && Number(version) > 1);
    expect(becauseOf(await host.workbook())).toBe('excelTooOld');
    expect(becauseOf(await host.addSheets([reportSheet('Forecast')]))).toBe('excelTooOld');
    expect(becauseOf(await host.repairFormulas())).toBe('excelTooOld');
    requirements.isSetSupported = asked;
    expect(stateOf(found.rig.workbook)).toEqual(before);
  });
});

describe('a name that is taken while a sheet is being written', () => {
  it('leaves the sheet of that name alone, and nothing of ours', async () => {
    const { rig } = await opened(ACTIONS['write the forecast']!);
    const work = followed();
    let before = stateOf(rig.workbook);
    const progress = (share: number): void => {
      if (rig.workbook.sheets.some(({ name }) => name === 'Forecast')) return;
      const [ours] = rig.workbook.sheets.splice(-1);
      rig.workbook.sheets.push(emptySheet('Forecast'));
      before = { ...stateOf(rig.workbook), events: true };
      rig.workbook.sheets.push(ours!);
      work.progress(share);
    };
    const outcome = await excelHost().addSheets([reportSheet('Forecast')], { ...work, progress });
    expect(becauseOf(outcome)).toBe('excelRefused');
    expect(stateOf(rig.workbook)).toEqual(before);
  });
});

describe.each(Object.entries(ACTIONS))('%s, given up', (_, action) => {
  it('at any of its requests leaves the workbook as it was, or is done', async () => {
    const whole = await opened(action);
    await action.act(whole.session);
    const [after, { syncs }] = [stateOf(whole.rig.workbook), whole.rig.traffic];
    for (let at = 1; at <= syncs; at += 1) {
      const { rig, session } = await opened(action);
      const before = stateOf(rig.workbook);
      let sent = 0;
      const count = (now: number): void => {
        sent = now;
        if (sent === at) session.underway.value?.giveUp();
      };
      Object.defineProperty(rig.traffic, 'syncs', { get: () => sent, set: count });
      await action.act(session);
      const text = session.notice.value?.text ?? '';
      const now = stateOf(rig.workbook);
      const isLeft = JSON.stringify(now.sheets) === JSON.stringify(before.sheets);
      if (!isLeft && !text.includes('still there'))
        expect([at, text, now.sheets]).toEqual([at, text, after.sheets]);
      if (text.includes('still there')) expect(text).toMatch(/^given up\. .*“Crankbook settings”/);
      else expect(session.notice.value?.kind ?? 'done').toBe('done');
      expect(now.events).toBe(true);
    }
  }, 60_000);
});
