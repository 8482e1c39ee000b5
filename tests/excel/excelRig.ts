import type { Bridge, OfficePage } from './bootOffice.ts';
import { bootOffice } from './bootOffice.ts';
import type { RequirementSets } from './hostWindow.ts';
import { hostWindow, PROGRAMS } from './hostWindow.ts';
import type { Program } from './program.ts';
import { startProgram } from './program.ts';

/** The library at work in a page of its own, and the program behind it. */
export type ExcelRig = OfficePage & Program;

/** Makes the library's globals those of this process, where the adapter looks for them. */
export function useGlobals({ globals }: ExcelRig): void {
  const { Office, Excel, OfficeExtension, CustomFunctions } = globals;
  Object.assign(globalThis, { Office, Excel, OfficeExtension, CustomFunctions });
}

/** Boots the library in front of a workbook with these sheets. */
export async function startExcel(
  sheets: readonly string[] = ['Sheet1'],
  sets: RequirementSets = PROGRAMS.current,
  isPaneOpen = true,
): Promise<ExcelRig> {
  const program = startProgram(sheets, (message) => bridge.onMessageFromHost!(message));
  const bridge: Bridge = { sendMessageToHost: (text) => setTimeout(() => program.take(text)) };
  const page = await bootOffice(hostWindow(sets, 'C:\\Fleet.xlsx', isPaneOpen), bridge);
  return { ...page, ...program };
}
