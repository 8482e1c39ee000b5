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

/** What the program for Windows says of itself, as plain values by the names in which the library asks. */
export function hostAnswers(
  program: RequirementSets,
  documentAddress: string,
  isPaneOpen = true,
): Readonly<Record<string, string | number>> {
  return {
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
    GetOfficeThemeInfo: '{}',
  };
}

/** How the program for Windows names itself, its platform, the library's file and the language. */
export const HOST_INFO = 'Excel$Win32$16.01$en-US$$$$1';

/** The object by which the library asks the program that shows its page. */
export function hostWindow(...about: Parameters<typeof hostAnswers>): Record<string, unknown> {
  const answers = { ...hostAnswers(...about), GetSettings: { Read: () => undefined } };
  const context = Object.fromEntries(Object.entries(answers).map(([name, value]) => [name, () => value]));
  return {
    GetHostInfo: () => HOST_INFO,
    GetContext: () => context,
    GetLoggingAllowed: () => false,
    Execute: () => undefined,
    RegisterEvent: () => undefined,
    UnregisterEvent: () => undefined,
  };
}
