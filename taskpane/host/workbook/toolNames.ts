/** What the grid's pictures on buttons mean, by the command behind them. */
const NAMES: Readonly<Record<string, string>> = {
  'univer.command.undo': 'Undo',
  'univer.command.redo': 'Redo',
  'sheet.command.set-once-format-painter': 'Copy the look',
  'sheet.command.clear-selection-all': 'Clear',
  'sheet.command.set-range-font-family': 'Font',
  'sheet.command.set-range-fontsize': 'Font size',
  'sheet.command.set-range-font-increase': 'Larger font',
  'sheet.command.set-range-font-decrease': 'Smaller font',
  'sheet.command.set-range-bold': 'Bold',
  'sheet.command.set-range-italic': 'Italic',
  'sheet.command.set-range-underline': 'Underlined',
  'sheet.command.set-range-stroke': 'Struck out',
  'sheet.command.set-range-text-color': 'Colour of the text',
  'sheet.command.set-background-color': 'Colour of the cell',
  'sheet.command.set-border-basic': 'Borders',
  'sheet.command.set-horizontal-text-align': 'Left, middle or right',
  'sheet.command.set-vertical-text-align': 'Top, middle or bottom',
  'sheet.command.set-text-wrap': 'Wrapping',
  'sheet.command.set-text-rotation': 'Turned text',
  'sheet.command.add-worksheet-merge': 'Merge cells',
  'sheet.command.numfmt.set.percent': 'Per cent',
  'sheet.command.numfmt.set.currency': 'Currency',
  'sheet.command.numfmt.add.decimal.command': 'One more decimal',
  'sheet.command.numfmt.subtract.decimal.command': 'One decimal less',
  'sheet.command.toggle-gridlines': 'Grid lines',
  'base-ui.operation.toggle-shortcut-panel': 'Keys of the grid',
};

const MORE = 'More choices';

/** Names by place, for what has no command. Several of a kind are named in their order. */
const NAMES_BY_PLACE: readonly (readonly [string, readonly string[]])[] = [
  ['[data-u-command="sheet.command.set-range-font-family"] input', ['Font']],
  ['[data-u-command="sheet.command.set-range-fontsize"] input', ['Font size']],
  ['[data-u-comp="defined-name"] input', ['Address or name to go to']],
  ['[data-u-comp="formula-bar"] button', ['Taller formula line']],
  ['button[data-u-comp="sheet-bar-append-button"]', ['Add a sheet', 'List of sheets']],
  [
    'button[data-u-comp="button"]:empty, button[data-u-comp="button"]:has(> svg:only-child)',
    ['Smaller view', 'Larger view'],
  ],
];

/** Gives names to the grid's buttons and fields that have none; they come and go, so it is called again. */
export function nameTools(container: HTMLElement): void {
  for (const tool of container.querySelectorAll<HTMLElement>('[data-u-command]:not([aria-label])')) {
    tool.setAttribute('aria-label', nameOfCommand(tool.dataset['uCommand']!));
  }
  for (const [place, names] of NAMES_BY_PLACE) {
    container.querySelectorAll(place).forEach((tool, index) => {
      const name = names[index % names.length]!;
      if (!tool.hasAttribute('aria-label')) tool.setAttribute('aria-label', name);
    });
  }
  giveRoles(container);
}

/** Roles that the grid leaves out or invents: a name may stand only where there is a role to name. */
function giveRoles(container: HTMLElement): void {
  const each = (what: string, act: (found: HTMLElement) => void): void =>
    container.querySelectorAll<HTMLElement>(what).forEach(act);
  each('[aria-expanded][type="button"]:not(button):not([role])', (opener) => {
    opener.setAttribute('role', 'button');
    const command = opener.closest<HTMLElement>('[data-u-command]')?.dataset['uCommand'];
    const name = command === undefined ? MORE : `${nameOfCommand(command)}: ${MORE.toLowerCase()}`;
    if (!opener.hasAttribute('aria-label') && opener.textContent === '')
      opener.setAttribute('aria-label', name);
  });
  each('div[data-u-command]:not([role])', (tool) => tool.setAttribute('role', 'group'));
  each('[role="track"]', (track) => track.setAttribute('role', 'group'));
  each('[role="handle"]', (handle) => {
    handle.removeAttribute('role');
    handle.setAttribute('aria-label', 'Size of the view');
  });
  each('a[role="button"]:empty:not([aria-label])', (middle) =>
    middle.setAttribute('aria-label', 'Normal size'),
  );
  // The grid makes two places for its notices, under one name.
  each('section[aria-label^="Notifications"] ~ section[aria-label^="Notifications"]', (place) =>
    place.setAttribute('aria-label', 'Further notices'),
  );
}

/** The name of a command; for one that is not listed, the words of its own id. */
function nameOfCommand(command: string): string {
  const words = command.replace(/^.*(command|operation)\./, '').replace(/[-.]/g, ' ');
  return NAMES[command] ?? words;
}
