import { writeSync } from 'node:fs';

/** A refusal in words for the person at the keyboard; a command ends with 1 where the input can't be used, 2 for wrong usage. */
export class Refusal extends Error {
  constructor(
    readonly code: 1 | 2,
    sentence: string,
  ) {
    super(sentence);
  }
}

/** Runs a command: refusals go to stderr as one sentence, results to stdout, the code to the shell. */
export async function runCommand(command: () => Promise<string>): Promise<void> {
  try {
    writeAll(1, await command());
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    writeAll(2, `${error.message}\n`);
    process.exitCode = error.code;
  }
}

/** Writes a text whole, however slow the reader of a pipe is. */
function writeAll(stream: 1 | 2, text: string): void {
  const bytes = Buffer.from(text);
  for (let done = 0; done < bytes.length;) {
    try {
      done += writeSync(stream, bytes, done);
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EPIPE') return;
      if (code !== 'EAGAIN') throw error;
    }
  }
}
