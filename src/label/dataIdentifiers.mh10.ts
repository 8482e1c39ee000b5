import type { ElementMeaning } from './labelElement.ts';

/** Data identifiers of ANSI MH10.8.2 that a battery's label may hold (format 06). */
export const DATA_IDENTIFIERS: Readonly<Record<string, ElementMeaning>> = {
  '17V': { name: 'maker', role: 'maker' },
  '12V': { name: 'business number', role: 'enterprise', agency: 'UN', shape: /^\d{9,13}$/ },
  '7L': { name: 'activity address', role: 'enterprise', agency: 'LD', shape: /^[0-9A-Z]{6}$/ },
  '18V': { name: 'enterprise', role: 'enterprise', agency: '' },
  '3V': { name: 'enterprise', role: 'enterprise', agency: '' },
  '1P': { name: 'part', role: 'part' },
  P: { name: 'customer part' },
  '2P': { name: 'revision' },
  '30P': { name: 'first-level part' },
  S: { name: 'serial', role: 'serialOfPart' },
  '18S': { name: 'maker and serial', role: 'makerAndSerial', shape: /^.{6,25}$/ },
  '25S': { name: 'uii', role: 'uii' },
  '1T': { name: 'lot', role: 'lot' },
  T: { name: 'customer lot' },
  N: { name: 'stock number', role: 'stock', shape: /^[0-9A-Z]{13,15}$/ },
  '16D': { name: 'made', role: 'made', date: 'yyyyMMdd' },
  '17D': { name: 'made', role: 'made', date: 'ddMMyyyy' },
  D: { name: 'date', role: 'date', date: 'yyMMdd' },
  '1D': { name: 'date', role: 'date', date: 'ddMMyy' },
  '2D': { name: 'date', role: 'date', date: 'MMddyy' },
  '4D': { name: 'date', role: 'date', date: 'yyooo' },
  '7D': { name: 'date', role: 'date', date: 'MMyy' },
  '10D': { name: 'date', role: 'date', date: 'kkWW' },
  '11D': { name: 'date', role: 'date', date: 'kkkkWW' },
  '12D': { name: 'date', role: 'date', date: 'yyyyMMdd' },
  '14D': { name: 'expires', date: 'yyyyMMdd' },
  '20D': { name: 'inspected', date: 'ddMMyyyy' },
  Q: { name: 'quantity' },
  '4L': { name: 'origin', shape: /^[A-Z]{2}$/ },
  I: { name: 'vehicle' },
};

/**
 * Text elements of format 12. MFR, PNO, SER, SEQ, UCN and LOT were seen in the index of a standard, the others are
 * from memory.
 */
export const TEXT_ELEMENTS: Readonly<Record<string, ElementMeaning>> = {
  MFR: { name: 'maker', role: 'maker' },
  CAG: { name: 'maker', role: 'maker' },
  SPL: { name: 'maker', role: 'maker' },
  DUN: { name: 'business number', role: 'enterprise', agency: 'UN', shape: /^\d{9,13}$/ },
  PNO: { name: 'part', role: 'part' },
  PNR: { name: 'current part' },
  SER: { name: 'serial', role: 'serialOfMaker' },
  UCN: { name: 'serial', role: 'serialOfMaker' },
  SEQ: { name: 'serial', role: 'serialOfPart' },
  LOT: { name: 'lot', role: 'lot' },
  LTN: { name: 'lot', role: 'lot' },
  BII: { name: 'lot', role: 'lot' },
  UID: { name: 'item id without agency' },
  USN: { name: 'uii', role: 'uii' },
  UST: { name: 'uii', role: 'uii' },
};
