/** Which requirement sets a program of a given age answers yes to: name of the set and its newest version. */
export type RequirementSets = Readonly<Record<string, string>>;

/** Programs as the published tables of requirement sets describe them. */
export const PROGRAMS = {
  /** The volume-licensed program of 2021. */
  ltsc2021: sets('1.14', '1.3', '1.1'),
  /** The current subscription program. */
  current: sets('1.20', '1.5', '1.2'),
  /** The program in a browser. */
  web: sets('1.20', '1.5', '1.2'),
  /** Older than anything we ask for. */
  tooOld: sets('1.9', '1.1', '1.1'),
} as const satisfies Record<string, RequirementSets>;

function sets(excelApi: string, customFunctions: string, sharedRuntime: string): RequirementSets {
  return {
    ExcelApi: excelApi,
    CustomFunctionsRuntime: customFunctions,
    SharedRuntime: sharedRuntime,
    DelayForCellEdit: '1.1',
    // The two sets by which the runtime of the functions chooses the form of its messages.
    CustomFunctions: '1.7',
    RichApi: '1.1',
  };
}

const DISPLAY = { hidden: 1, pane: 2 } as const;

/** What the library asks of the program that shows its page, answered as the program for Windows does. */
export function hostWindow(
  program: RequirementSets,
  documentAddress: string,
  isPaneOpen = true,
): Record<string, unknown> {
  const answers: Record<string, unknown> = {
    GetAppType: 1,
    GetSolutionRef: 'crankbook-under-test',
    GetAppVersionMajor: 16,
    GetAppVersionMinor: 1,
    GetAppUILocale: 1033,
    GetAppDataLocale: 1033,
    GetDocUrl: documentAddress,
    GetAppCapabilities: 0,
    GetActivationMode: 0,
    GetControlIntegrationLevel: 1,
    GetSolutionToken: '',
    GetSupportedMatrix: JSON.stringify(program),
    GetInitialDisplayMode: isPaneOpen ? DISPLAY.pane : DISPLAY.hidden,
    GetHostFullVersion: '16.0.18000.20000',
    GetSettings: { Read: () => undefined },
    GetOfficeThemeInfo: '{}',
  };
  const context = Object.fromEntries(Object.entries(answers).map(([name, value]) => [name, () => value]));
  return {
    GetHostInfo: () => 'Excel$Win32$16.01$en-US$$$$1',
    GetContext: () => context,
    GetLoggingAllowed: () => false,
    Execute: () => undefined,
    RegisterEvent: () => undefined,
    UnregisterEvent: () => undefined,
  };
}
