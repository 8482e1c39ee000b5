import type { Member } from './member.ts';
import { namesMember } from './nameMember.ts';
import { rangeMember } from './rangeMember.ts';
import { sheetsMember } from './sheetMember.ts';
import { tablesMember } from './tableMember.ts';
import type { ModelWorkbook } from './workbookModel.ts';
import { Refusal } from './workbookModel.ts';

/** The workbook: where every request begins. */
export function workbookMember(workbook: ModelWorkbook): Member {
  return {
    of: 'Workbook',
    get: { Name: () => workbook.name },
    child: {
      Worksheets: () => sheetsMember(workbook),
      Tables: () => tablesMember(workbook),
      Names: () => namesMember(workbook, workbook.names),
      Application: () => application(workbook),
      Functions: () => functions(workbook),
      Protection: () => ({ of: 'WorkbookProtection', get: { Protected: () => workbook.isProtected } }),
      _Runtime: () => ({
        of: 'Runtime',
        get: { EnableEvents: () => workbook.enableEvents },
        set: { EnableEvents: (value: boolean) => void (workbook.enableEvents = value) },
      }),
    },
    call: {
      GetSelectedRange: () => {
        if (workbook.selected === undefined)
          throw new Refusal('InvalidSelection', 'the current selection is not a range');
        return rangeMember(workbook, workbook.selected.sheet, workbook.selected.block);
      },
    },
  };
}

function application(workbook: ModelWorkbook): Member {
  return {
    of: 'Application',
    get: { CalculationMode: () => workbook.calculationMode },
    call: {
      SuspendApiCalculationUntilNextSync: () => undefined,
      SuspendScreenUpdatingUntilNextSync: () => undefined,
      CreateWorkbook: (base64: string) => ({
        of: 'WorkbookCreated',
        call: { Open: () => void workbook.opened.push(base64) },
      }),
    },
  };
}

// Only the one function by which the date system shows itself.
function functions(workbook: ModelWorkbook): Member {
  return {
    of: 'Functions',
    call: {
      Date: (year: number, month: number, day: number) => {
        const serial = Date.UTC(year, month - 1, day) / 86_400_000 + 25_569;
        const value = workbook.dates1904 ? serial - 1462 : serial;
        return { of: 'FunctionResult', get: { Value: () => value, Error: () => null } };
      },
    },
  };
}
