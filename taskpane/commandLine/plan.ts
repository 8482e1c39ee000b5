import { runCommand } from './exit.ts';
import { planCommand } from './planCommand.ts';

void runCommand(() => planCommand(process.argv.slice(2)));
