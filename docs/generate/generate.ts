import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { writeMetadata } from './metadata.ts';
import { validationText } from './validationSections.ts';
import { writePictures } from './writePictures.ts';

function writeDoc(file: string, text: string): void {
  writeFileSync(fileURLToPath(new URL(`../${file}`, import.meta.url)), text);
}

writeMetadata();
// The workbook reads the metadata when it is loaded: not before it has been written.
const { exampleAnswers } = await import('./exampleAnswers.ts');
const { functionsDoc } = await import('./functionsDoc.ts');
writeDoc('functions.md', functionsDoc(await exampleAnswers()));
writeDoc('validation.md', validationText());
writePictures();
// The engine keeps timers of its own.
process.exit();
