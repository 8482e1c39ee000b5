/** Waits until Excel is ready and shows the pane; the page runs before that, for the cell functions alone. */
export async function paneShown(): Promise<void> {
  const { addin } = (await Office.onReady()) as { addin?: { visibilityMode?: string } | null };
  if (addin?.visibilityMode !== 'Hidden') return;
  await new Promise<void>((shown) => {
    const look = ({ visibilityMode }: Office.VisibilityModeChangedMessage): void => {
      if (visibilityMode === Office.VisibilityMode.taskpane) shown();
    };
    // A program that can't tell when the pane is shown gets it at once.
    Office.addin.onVisibilityModeChanged(look).catch(() => shown());
  });
}

/** Whether the page stands in Excel and not in a browser of its own. */
export function isInExcel(): boolean {
  return Office.context.host === Office.HostType.Excel;
}

/** Whether Excel is dark, where it tells; in a browser it does not. */
export function excelIsDark(): boolean | undefined {
  const theme = Office.context.officeTheme as Office.OfficeTheme | undefined;
  const colour = /^#?([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(theme?.bodyBackgroundColor ?? '');
  if (colour === null) return undefined;
  const [red, green, blue] = colour.slice(1).map((part) => parseInt(part, 16)) as [number, number, number];
  return 0.3 * red + 0.59 * green + 0.11 * blue < 128;
}
