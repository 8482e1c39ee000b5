/** What a text of the status column says about where a battery is. */
export type StatusMeaning =
  | 'inService'
  | 'parked'
  | 'inStock'
  | 'removed'
  /** Failed, dead: out where removals are on record at all, else only its condition. */
  | 'perhapsRemoved'
  /** Says how it is and not where. */
  | 'condition'
  | 'nothing'
  | 'unknown';

const WORDS: readonly (readonly [RegExp, StatusMeaning])[] = [
  [/^(n a|na|unknown|unk|tbd|tba|x|\?)?$/, 'nothing'],
  [
    /\b(park(ed)?|laid up|lay up|standing|seasonal|mothball\w*|hibernat\w*|winter store|off season)\b/,
    'parked',
  ],
  [
    /\b(remov\w*|scrap\w*|dispos\w*|turn(ed)? ?in|turnin|withdrawn|replaced|out of (service|use|svc)|not in (service|use)|retired|sold|stolen|lost|written off|recycl\w*|exchanged|gone|struck off|decommission\w*|returned( to (maker|supplier))?|inactive|ended|out|other|u s removed|off)\b/,
    'removed',
  ],
  [
    /\b(in ?service|in ?svc|in ?use|fitted|installed|active|operational|on (vehicle|veh|truck|road)|in (vehicle|veh|truck)|mounted|deployed|working|running|live|issued)\b/,
    'inService',
  ],
  [
    /\b(stock|in stock|stores?|in stores?|shelf|spares?|reserve|new|available|warehouse|on hand|awaiting issue|for issue|stored|unissued|charging|on charge|bench)\b/,
    'inStock',
  ],
  [/\b(failed|dead|defect\w*|faulty)\b/, 'perhapsRemoved'],
  [
    /\b(ok|good|serviceable|svc|condemned|unserviceable|u s|awaiting charge|not judged|weak|fair|poor|pass(ed)?|fail|repair\w*|monitor|check|[abcdefghjks])\b/,
    'condition',
  ],
];

/** What a status says. */
export function statusMeaning(text: string): StatusMeaning {
  const words = text
    .toLowerCase()
    .replace(/[^a-z0-9?]+/g, ' ')
    .trim();
  return WORDS.find(([pattern]) => pattern.test(words))?.[1] ?? 'unknown';
}
