import type { MemorySheet } from '../memoryHost.ts';
import { AS_OF } from '../paneSession.ts';

const HEADS = ['Serial', 'Type', 'Site', 'Vehicle', 'Installed', 'Status'];

/** A sheet of six invented batteries: two sets of two, and two in stock. */
export const benchSheet: MemorySheet = {
  name: 'Batteries',
  rows: [
    HEADS,
    ['NF2001', '6T AGM', 'Kaldmoor', 'NF-1', AS_OF - 700, 'in service'],
    ['NF2002', '6T AGM', 'Kaldmoor', 'NF-1', AS_OF - 690, 'in service'],
    ['NF2003', '6T AGM', 'Isvarg Pass', 'NF-2', AS_OF - 400, 'in service'],
    ['NF2004', '6T flooded', 'Isvarg Pass', 'NF-2', AS_OF - 100, 'in service'],
    ['NF2005', '6T AGM', 'Kaldmoor', null, null, 'in stock'],
    ['NF2006', '6T flooded', 'Kaldmoor', null, null, 'in stock'],
  ],
  dateColumns: [4],
};
