/** What a column of an inventory can hold. */
export type Field = (typeof FIELDS)[number];

/** Every field, in the order in which a person would fill a row. */
export const FIELDS = [
  'serial',
  'stockNumber',
  'part',
  'maker',
  'type',
  'construction',
  'code',
  'made',
  'lot',
  'site',
  'vehicle',
  'set',
  'place',
  'installed',
  'watchedSince',
  'removed',
  'cause',
  'status',
  'damage',
  'restVolts',
  'temperature',
  'reading',
  'loadVolts',
  'least',
  'rating',
  'retest',
  'testedOn',
  'chargedOn',
  'storagePlace',
  'pricePaid',
] as const;

/** How a field's cells are read. */
export type FieldKind = 'text' | 'identifier' | 'date' | 'number' | 'code';

/** A field: its name for people, how its cells are read, and the header words by which it is known. */
export type FieldSpec = {
  readonly label: string;
  readonly kind: FieldKind;
  /**
   * Header words, lower case, without signs; the whole header, or, for `within`, words inside a longer one. The
   * longest match wins, so "date removed" is not taken for a plain "date".
   */
  readonly headers: readonly string[];
  readonly within: readonly string[];
};

const spec = (label: string, kind: FieldKind, headers: string, within = ''): FieldSpec => ({
  label,
  kind,
  headers: list(headers),
  within: list(within),
});

const list = (text: string): string[] =>
  text
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');

/** The fields with their header words: words of the trade as inventories spell and shorten them. */
export const FIELD_SPECS: Readonly<Record<Field, FieldSpec>> = {
  serial: spec(
    'serial',
    'identifier',
    's n, sn, serial, ser, serno, ser no, serial no, serial number, serialnumber, serial nr, unit, unit no, unit id, battery, battery id, battery no, battery number, batt id, batt no, batt, id, asset, asset no, asset number, asset id, uii, uid, tag, tag no, barcode',
    'serial no, serial number, serial, battery id, battery no, battery serial, batt s n, batt sn, asset no, asset number',
  ),
  stockNumber: spec(
    'stock number',
    'identifier',
    'nsn, stock number, stock no, stock nr, niin, nato stock number, national stock number, nato no, item number, stores no, stores ref',
    'nsn, stock number, stock no, niin',
  ),
  part: spec(
    'part number',
    'identifier',
    'part, part no, part number, part nr, p n, pn, partno, article, article no, article number, order code, catalogue no, model no, model number',
    'part no, part number, p n, article no',
  ),
  maker: spec(
    'maker',
    'text',
    'maker, make, manufacturer, mfr, mfgr, manuf, brand, cage, cage code, ncage, vendor, supplier, producer, made by, mfg, mfg by',
    'manufacturer, maker, cage, mfr, brand, supplier',
  ),
  type: spec(
    'type',
    'text',
    'type, batt type, battery type, model, kind, group, group size, size, bci group, description, descr, desc, item, nomenclature, item name, item description',
    'battery type, batt type, type, description, model, nomenclature',
  ),
  construction: spec(
    'construction',
    'text',
    'construction, technology, tech, chemistry, design, agm flooded, agm or flooded, wet agm, plate type',
    'construction, technology, chemistry',
  ),
  code: spec(
    'manufacture code',
    'code',
    'code, date code, mfg code, mfg date code, manufacture code, manufacturing code, manuf code, made code, batch code, lot code, stamp, case code, label code, prod code, production code, mfr code, build code, mfd code, d c',
    'date code, mfg code, manufacture code, manufacturing code, production code, lot code, batch code, stamp code, date stamp, mfr code, build code',
  ),
  made: spec(
    'date made',
    'date',
    'made, date made, made on, mfg date, manufacture date, date of manufacture, manufactured, date manufactured, mfd, dom, build date, date built, production date, prod date, mfr date, manuf date',
    'date of manufacture, manufacture date, mfg date, date made, date mfd, production date, build date, date manufactured, date of mfg',
  ),
  lot: spec(
    'lot',
    'identifier',
    'lot, lot no, lot number, batch, batch no, batch number',
    'lot no, lot number, batch no',
  ),
  site: spec(
    'site',
    'text',
    'site, loc, location, depot, base, station, garage, yard, place, town, region, district, area, branch, camp, post, unit location, home base, workshop, organisation, organization, org, department, dept, company',
    'site, location, depot, home base, garage, station, region, workshop',
  ),
  vehicle: spec(
    'vehicle',
    'identifier',
    'vehicle, veh, veh no, veh reg, vehicle no, vehicle id, vehicle number, vehicle registration, reg, reg no, regn, registration, registration no, plate, number plate, licence plate, license plate, bumper, bumper no, bumper number, fleet no, fleet number, truck, truck no, equipment, equipment no, equip no, admin no, host, platform, vin',
    'veh reg, vehicle reg, vehicle registration, vehicle no, vehicle id, vehicle, veh, registration, bumper no, fleet no, truck no',
  ),
  set: spec(
    'set',
    'identifier',
    'set, set no, set id, set number, bank, bank no, string, string no, pair, pair no, battery set, batt set',
    'set no, set id, battery set, bank no, pair no, string no',
  ),
  place: spec(
    'place in the set',
    'text',
    'socket, slot, position, pos, posn, place in set, place in the set, place in vehicle, tray, compartment, battery position, batt pos, location in vehicle',
    'position, socket, slot, place in the set, place in set, place in vehicle, batt pos',
  ),
  installed: spec(
    'installed',
    'date',
    'installed, install, install date, inst date, inst, date inst, date installed, installation date, installation, fitted, date fitted, fit date, fitted on, installed on, in service, in svc, in service date, in svc date, service date, date in service, in service since, in use since, put in service, issued, issue date, date issued, issued on, date issue, entered service, mounted, date mounted, start date, date in, commissioned',
    'install date, installed on, date installed, date fitted, fitted on, in service date, in service since, in svc, date in service, installation date, date of installation, date issued, issue date, installed, fitted',
  ),
  watchedSince: spec(
    'watched since',
    'date',
    'watched since, watched from, first seen, first seen date, first seen on, seen since, on record since, recorded since, record start, records since, tracked since, under record since, first recorded, first record, first inspection, first inventory, observed since, first observed, on books since, date first seen',
    'watched since, first seen, on record since, recorded since, tracked since, first recorded, observed since, first observed',
  ),
  removed: spec(
    'removed',
    'date',
    'removed, remove date, removed date, removal, removal date, date removed, removed on, date of removal, out, out date, date out, out of service, out of service date, taken out, date taken out, replaced, replaced on, date replaced, replacement date, withdrawn, withdrawn on, date withdrawn, scrapped, scrap date, date scrapped, disposed, disposal date, date disposed, turned in, turn in date, date turned in, end date, off date, date off, failed on, failure date, date failed',
    'removal date, removed date, date removed, removed on, date out, date replaced, out of service, date taken out, date withdrawn, date scrapped, disposal date, turn in date, date of removal, removed',
  ),
  cause: spec(
    'removal cause',
    'text',
    'reason, cause, removal reason, reason removed, reason for removal, cause of removal, removal cause, why removed, failure reason, failure mode, failure cause, fault, defect, why, reason code, remove reason, reason out, disposal reason, reason for disposal, reason for replacement',
    'reason for removal, cause of removal, removal reason, removal cause, reason removed, why removed, failure mode, failure cause, reason, cause',
  ),
  status: spec(
    'status',
    'text',
    'status, state, in use, stat, present status, current status, disposition, availability, where now',
    'status, disposition',
  ),
  damage: spec(
    'damage',
    'text',
    'damage, damaged, visual, visual check, visual inspection, case, case condition, physical condition, physical damage, visible damage, look',
    'damage, visual, case condition, physical condition',
  ),
  restVolts: spec(
    'rest voltage',
    'number',
    'ocv, volts, voltage, v, volt, rest volts, rest voltage, rest v, resting voltage, open circuit voltage, open circuit, open circuit volts, oc volts, v rest, static voltage, standing voltage, batt v, battery voltage',
    'ocv, rest voltage, rest volts, open circuit, resting voltage, resting volts, static voltage, voltage, volts',
  ),
  temperature: spec(
    'temperature',
    'number',
    'temp, temperature, batt temp, battery temp, battery temperature, temp c, temp f, temperature c, temperature f, deg c, deg f, ambient, ambient temp, t c, t f, degc, degf, case temp',
    'battery temperature, temperature, batt temp, temp',
  ),
  reading: spec(
    'cranking reading',
    'number',
    'cca, cca meas, cca measured, measured cca, cca reading, cca read, cca test, cca tested, tested cca, actual cca, cranking, cranking reading, cranking amps, cold cranking amps, reading, amps, tester reading, test reading, test result a, meas cca, test a, test amps, conductance, cca actual',
    'cca meas, cca measured, measured cca, cca reading, cca test, tested cca, actual cca, cranking reading, cranking amps, tester reading, test reading, cca actual, test amps',
  ),
  loadVolts: spec(
    'load-test volts',
    'number',
    'load volts, load v, load test, load test v, load test volts, load voltage, volts under load, v load, v under load, under load, loaded volts, end volts',
    'load volts, load test, load voltage, under load, loaded volts',
  ),
  least: spec(
    'least accepted',
    'number',
    'least, least accepted, minimum, min, min cca, cca min, minimum cca, least cca, limit, reject below, accept limit, threshold, pass mark, required, required cca, least reading, min reading, min accepted, minimum accepted, reject limit',
    'least accepted, min cca, cca min, minimum cca, minimum accepted, min accepted, reject below, pass mark, required cca, accept limit, least reading, reject limit',
  ),
  rating: spec(
    'label rating',
    'number',
    'rating, rated, rated cca, cca rated, cca rating, label cca, cca label, label rating, nominal cca, cca nominal, cca new, new cca, nameplate, rated amps, spec cca, cca spec, marked cca, en, en a, cca en, din',
    'rated cca, cca rated, cca rating, label cca, cca label, label rating, nominal cca, cca nominal, rated amps, cca spec, cca new, rating',
  ),
  retest: spec(
    'retest',
    'text',
    'retest, re test, retested, second test, after charge test, test no, test number, nth test',
    'retest, re test, second test',
  ),
  testedOn: spec(
    'tested on',
    'date',
    'tested, tested on, test date, date tested, last test, last tested, last test date, date of test, date of last test, measured on, date measured, checked, checked on, last check, last checked, date checked, inspection date, inspected, inspected on, reading date, ocv date',
    'test date, date tested, tested on, last test, date of test, date of last test, last checked, date checked, date measured, measured on, reading date, last inspection',
  ),
  chargedOn: spec(
    'charged on',
    'date',
    'charged, charged on, charge date, date charged, last charge, last charged, last charge date, recharged, recharged on, recharge date, date recharged, boosted, boosted on, topped up on',
    'charge date, date charged, charged on, last charge, last charged, recharge date, date recharged, recharged on',
  ),
  storagePlace: spec(
    'storage place',
    'text',
    'storage, storage place, storage location, shelf, bin, bin no, rack, bay, shelf no, warehouse, store, stored at, bin location, stock location, store location',
    'storage place, storage location, shelf, bin location, stock location, store location, warehouse',
  ),
  pricePaid: spec(
    'price paid',
    'number',
    'price, price paid, unit price, cost, unit cost, paid, purchase price, amount, value, cost each',
    'price paid, unit price, purchase price, unit cost, price',
  ),
};
