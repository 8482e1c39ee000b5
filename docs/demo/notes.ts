import { SITES } from './service.ts';

const places = SITES.map(
  ({ name, coldest, average, heatedStore }) =>
    `${name}: coldest ${coldest} C, average ${average} C, store ${heatedStore ? 'heated' : 'not heated'}.`,
);

/** The lines of sheet Notes. */
export const notesLines: readonly string[] = [
  'Notes on this workbook',
  'Everything here is invented: the Norrfell winter-road and rescue service, its stations, vehicles, batteries, stock numbers, maker codes, prices, readings and initials. No person, firm or product is meant. A script with a fixed seed made it.',
  'The register lists batteries in vehicles, batteries on shelves and batteries that were taken off. Every removal since 1 April 2021 is written down; what came off earlier is not in the sheet. Vintermark joined on 1 September 2022; its removals are known from that day on, and column "On books since" says so.',
  'A vehicle with four batteries has two pairs side by side on one 24 V set; "Pos" is the place in the set.',
  'Skarnhavn measures volts at the end of a load test; the other stations read cranking amperes. Fonnlia reads its thermometer in degrees Fahrenheit.',
  'Date codes: 9ZZ98 and 9ZZ96 print month and year; 9ZZ97 prints year and month; 9ZZ94 year and week; 9ZZ95 and 7ZZ91 a month letter (no I) and the last digit of the year. All of these makers are invented.',
  `Weather: ${places.join(' ')}`,
  'As-of of this print: 30 June 2026.',
];
