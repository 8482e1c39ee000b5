/**
 * What a finding does to its row: `repaired` = the row counts as used with a repair; `noted` = something to look
 * at, the row is used as it stands; `ageUnknown` = the battery's age can't be told from it.
 */
export type FindingStatus = 'repaired' | 'noted';

/** A kind of finding: how much it can move the answer (5 most), and what happens if nothing is done. */
export type FindingSpec = {
  readonly weight: 1 | 2 | 3 | 4 | 5;
  readonly status: FindingStatus;
  readonly ifNothing: string;
};

const noted = (weight: FindingSpec['weight'], ifNothing: string): FindingSpec => ({
  weight,
  status: 'noted',
  ifNothing,
});

const repaired = (weight: FindingSpec['weight'], ifNothing: string): FindingSpec => ({
  weight,
  status: 'repaired',
  ifNothing,
});

const AGE = 'age or date not known from it; in service the battery is planned as "age unknown"';
const NOT_READ = 'the cell counts as empty';
const AS_READ = 'the value stated is used';
const NOT_JUDGED = 'no charge and no verdict from it; the battery is not judged';

/** Every kind of finding, in plain words, with what it means for the answer. */
export const FINDING_KINDS = {
  // codes and identifiers
  'unreadable code': noted(4, AGE),
  'code later than as-of': noted(4, AGE),
  'code reads two ways': noted(5, 'the layout named here is used; the other gives other ages'),
  'codes in another layout': noted(3, 'the layout named here is used for this maker'),
  'leading zero eaten': repaired(2, 'read with the zero put back'),
  'long number in scientific form': noted(3, 'its last digits are lost; the cell counts as empty'),
  'stock number stored as a number': repaired(1, 'read as the 13 digits it holds'),
  'dash turned to a long dash': repaired(1, 'read as a plain dash'),
  'code turned to a date': repaired(3, 'the month that the date shows is taken as made'),
  'stock number malformed': noted(1, 'used as the text it is'),
  'maker code malformed': noted(1, 'used as the text it is'),
  // dates
  'text date': repaired(2, 'read as the day stated'),
  'date written as a number': repaired(2, 'read as the day stated'),
  'text date that reads two ways': noted(5, AGE),
  'unreadable date': noted(4, AGE),
  'year only': noted(4, AGE),
  'date later than as-of': noted(4, 'the date is not used; a removal after as-of counts as still in service'),
  'as-of older than the sheet': noted(5, 'what happened after as-of is not seen'),
  'installed before made': noted(3, 'the installation date is used; the made date is not'),
  'removed before installed': noted(4, 'the row gives no life'),
  'removed on the day installed': noted(2, 'a failure counts as a life of up to one day'),
  'removed, date missing': noted(4, 'not in service; its life is known only as over by as-of'),
  'removed, age unknown': noted(3, 'the removal can not be used for how long batteries last'),
  'removed before records begin': noted(1, 'not used for how long batteries last'),
  'watched since after removal': noted(3, 'the row gives no life'),
  'watched since missing': noted(3, 'the record start of the whole sheet is used'),
  'record start assumed': noted(
    5,
    'the month of the earliest removal is taken; say since when every removal is on record',
  ),
  'made date used for installed': repaired(4, 'time on the shelf counts as service'),
  'later installation unknown': repaired(3, 'no time on the shelf is taken off'),
  'age unknown': noted(5, 'planned on a line of its own with the ages of its type and site'),
  'old before it was fitted': noted(2, 'used; it was over 12 months on the shelf'),
  'long on the shelf or moved': noted(4, 'the date given is used as its first installation'),
  'in service over 12 years': noted(
    4,
    'used as it stands; a date that is wrong makes batteries seem to last',
  ),
  // cells
  'number with its unit': repaired(1, AS_READ),
  'decimal comma': repaired(2, AS_READ),
  'number stored as text': repaired(1, AS_READ),
  'unreadable number': noted(3, NOT_READ),
  placeholder: repaired(2, NOT_READ),
  'error in the cell': noted(3, NOT_READ),
  // one battery, one place
  'in two places at once': noted(4, 'counted as two batteries'),
  'two batteries in one place': noted(3, 'both are counted as in service'),
  'one battery in several rows': noted(2, 'one battery: life counted once from its first installation'),
  'status and removal date disagree': noted(4, 'the removal date decides'),
  'status not understood': noted(3, 'the dates and places decide where it is'),
  'neither vehicle nor installed': noted(3, 'taken as stock'),
  'in stock with an installed date': noted(2, 'taken as stock; no life from it'),
  'removal cause not understood': noted(4, 'taken as removed for another reason than failure'),
  'removal cause not said': noted(4, 'kept apart: neither failed nor good'),
  'site written otherwise': repaired(2, 'counted under the spelling that most rows use'),
  'site perhaps misspelt': noted(2, 'counted as a site of its own'),
  // readings
  'whole 24 V set': noted(2, NOT_JUDGED),
  'no rest voltage of a battery': noted(2, NOT_JUDGED),
  'on charge or not rested': noted(2, NOT_JUDGED),
  'deeply discharged': noted(3, 'charge counts as 0: to the battery shop'),
  'charged and tested the same day': noted(1, 'used as it stands; not rested, and no retest'),
  'temperature must be Fahrenheit': repaired(3, 'taken as degrees Fahrenheit'),
  'temperature no battery can have': noted(2, NOT_READ),
  'reading without a least': noted(3, 'no verdict from the reading'),
  'reading and least in different units': noted(2, 'no verdict from the reading'),
  'ratings of mixed kinds': noted(1, 'never converted, never used for a verdict'),
  'test too old to count': noted(2, 'not used; the battery is not judged'),
  'retest not understood': noted(2, 'taken as a first test'),
  'retest not in the order of dates': noted(2, 'the order of dates decides'),
  'reading differs from the Tests sheet': noted(2, 'the Tests sheet is used'),
  'charge date differs from the Charges sheet': noted(2, 'the Charges sheet is used'),
  'charge not full': noted(1, 'does not count as a charge'),
  'serial not in the inventory': noted(1, 'the row is not used'),
  'row without serial or date': noted(1, 'the row is not used'),
  'construction unknown': noted(3, 'taken as AGM'),
  'flooded judged as AGM': noted(3, 'judged as AGM: charge reads too low'),
  // sets, state and storage
  'set with mixed construction': noted(2, 'nothing: never mix constructions in one set'),
  'set over 12 months apart': noted(2, 'nothing: the older one wears the younger'),
  'odd number in a set': noted(2, 'whole sets are counted as they stand'),
  'condemned but still in service': noted(5, 'due now in the plan'),
  'stock due for charge': noted(3, 'not usable stock until charged'),
  'standing in a vehicle over 30 days': noted(2, 'may be discharged when it is needed'),
  'may freeze here': noted(4, 'a frozen battery is lost'),
  // the sheet
  'two columns fit one field': noted(5, 'the column named here is used'),
  'column guessed by its cells': noted(3, 'used as guessed'),
  'hidden rows counted': noted(3, 'counted all the same'),
  'workbook counts from 1904': noted(1, 'dates were moved by 1,462 days on reading'),
} as const satisfies Record<string, FindingSpec>;

/** The kinds of findings: a closed list of plain words. */
export type FindingKind = keyof typeof FINDING_KINDS;
