import type { Draft } from './draft.ts';
import { addGap, addSentence } from './draft.ts';
import { methodSentences } from './methodSentences.ts';
import type { ReportFacts } from './reportFacts.ts';

/** How the figures were made and what to mind when acting on them. */
export function addMethod(draft: Draft, facts: ReportFacts, columns: number): void {
  addSentence(draft, 'Method and cautions', 'heading', columns);
  for (const sentence of methodSentences(facts)) addSentence(draft, sentence, 'label', columns);
  addGap(draft);
  addSentence(draft, 'Safety and disposal', 'heading', columns);
  for (const sentence of CAUTIONS) addSentence(draft, sentence, 'caution', columns);
  if (facts.notes.length === 0) return;
  addGap(draft);
  addSentence(draft, 'Notes on the reading of the inventory', 'heading', columns);
  for (const note of facts.notes) addSentence(draft, sentenceCase(note), 'label', columns);
}

const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const CAUTIONS = [
  'A battery here weighs about 40 kg: two persons or a hoist. Acid, hydrogen and short circuits injure: eye protection, gloves, ventilation, no flames, ground cable off first and on last.',
  'Never charge, jump or test a frozen, cracked, bulged or hot battery. A leaking sealed battery ships as UN2794, no longer as non-spillable.',
  'Old batteries go to a licensed recycler. Local rules and licensed practice decide.',
];
