import type { RemovalMeaning } from '../service/battery.ts';
import type { RemovalCause } from './inventory.ts';
import { isPlaceholder } from './cells.ts';

/** How a text of the removal-cause column was understood. */
export type CauseReading = {
  readonly meaning: RemovalMeaning;
  /** `settings`: the user said so; `words`: known words; `rest`: no known word, so taken as no failure. */
  readonly by: 'settings' | 'words' | 'rest';
};

// Looked through in this order: a mate of a failed battery is good, a battery out of a crash is damaged.
const WORDS: readonly (readonly [RegExp, RemovalMeaning])[] = [
  [
    /\b(mate|pair|whole set|set (change|renew|replac)\w*|(change|renew|replac)\w* (as |of )?(a )?(whole )?set|with (the )?set|precaution\w*|prevent\w*|plan(ned)?|scheduled?|routine|campaign|age limit|time expired|life ?(limit|expired)|upgrad\w*|moderni[sz]\w*|retrofit\w*|recall)\b/,
    'good',
  ],
  [
    /\b(veh(icle)?|truck|host|unit|machine|equipment) (was |is )?(gone|sold|disposed\w*|written off|scrap\w*|transfer\w*|retired|withdrawn|auction\w*|returned|handed over|destroyed|lost)\b|\b(sold|stolen|theft|transfer\w*|swap(ped)?|rotat\w*|moved|relocat\w*|re-?issued|loan\w*|lent|returned to (stock|store|stores|supplier)|no fault( found)?|nff|tested (good|ok)|still good|good|serviceable|not failed|surplus|gone|disposal of vehicle|end of lease)\b/,
    'good',
  ],
  [
    /\b(accident\w*|crash\w*|collision|dropped|drop|cracked|crack|split|bulged?|bulging|swollen|burn(t|ed)?|fire|frozen|froze|frost|broken|broke|damag\w*|smashed|terminal torn|post (broken|melted|torn)|leak\w*|punctured?|flood damage|vandal\w*)\b/,
    'damaged',
  ],
  [
    /\b(fail\w*|dead|defect\w*|faulty|fault|short(ed)?( cell)?|shorted|open (circuit|cell)|bad|weak|worn( out)?|no start|non start|wont (start|crank|hold)|won t (start|crank|hold)|will not (start|crank|hold)|would not (start|crank|hold)|does not hold|doesn t hold|not hold\w*|no charge|low (cca|volts?|voltage|capacity|charge|cranking|output)|sulph\w*|sulf\w*|condemn\w*|u s|unserviceable|unsvc|uneconomical|ber|beyond (economic(al)? )?repair|kaput|flat|discharged|end of life|eol|expired|died|cannot be charged|can t be charged|dry|internal resistance|high resistance|did not (hold|crank|start|come up|charge))\b/,
    'failed',
  ],
  [/^(other( reason)?|misc(ellaneous)?)$/, 'good'],
];

// A word for the removal itself is no cause of it.
const NOTHING_SAID =
  /^((not|none) (said|known|stated|given|recorded)|unknown|no reason( given)?|unclear|various|see (log|remarks?|notes?|file|book)|as noted|removed|replaced|exchanged|changed|swap(ped)?|taken (off|out)|off|out|done|yes|y|x)$/;

/**
 * What a text of the removal-cause column means: what the settings say, else known words. A text without a known
 * word is a cause that is not a failure; blank and unreadable say nothing.
 */
export function causeReading(text: string, named: Readonly<Record<string, RemovalMeaning>>): CauseReading {
  const said = Object.hasOwn(named, text) ? named[text] : named[sameCase(text, named)];
  if (said !== undefined) return { meaning: said, by: 'settings' };
  const words = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
  if (words === '' || isPlaceholder(text) || NOTHING_SAID.test(words))
    return { meaning: 'notSaid', by: 'words' };
  const known = WORDS.find(([pattern]) => pattern.test(words));
  return known === undefined ? { meaning: 'good', by: 'rest' } : { meaning: known[1], by: 'words' };
}

const sameCase = (text: string, named: Readonly<Record<string, RemovalMeaning>>): string =>
  Object.keys(named).find((key) => key.trim().toLowerCase() === text.toLowerCase()) ?? text;

/** The removal causes of a sheet: each distinct text is understood once. */
export type Causes = {
  readonly meaningOf: (text: string) => RemovalMeaning;
  readonly readingOf: (text: string) => CauseReading;
  /** Every text asked for, with how often, the most frequent first. */
  readonly list: () => readonly RemovalCause[];
};

/** Understands the causes of removed rows and counts them. */
export function newCauses(named: Readonly<Record<string, RemovalMeaning>>): Causes {
  const seen = new Map<string, { readonly reading: CauseReading; count: number }>();
  const readingOf = (text: string): CauseReading => {
    const known = seen.get(text);
    if (known !== undefined) {
      known.count += 1;
      return known.reading;
    }
    const reading = causeReading(text, named);
    seen.set(text, { reading, count: 1 });
    return reading;
  };
  return {
    readingOf,
    meaningOf: (text) => readingOf(text).meaning,
    list: () =>
      [...seen]
        .map(([text, { reading, count }]) => ({
          text,
          count,
          meaning: reading.meaning,
          guessed: reading.by !== 'settings',
        }))
        .sort((a, b) => b.count - a.count),
  };
}
