import { runCommand } from './exit.ts';
import { formulaCommand } from './formulaCommand.ts';

// The engine keeps timers of its own: the command ends when its answer has been written.
void runCommand(() => formulaCommand(process.argv.slice(2))).then(() => process.exit());
