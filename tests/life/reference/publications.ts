/**
 * Where the lives of each reference file were published: a key of docs/sources.md, or made up for this project.
 * Small samples, typed as facts in our own columns; the first line of a file names the publication.
 */
export const publications: Readonly<Record<string, string>> = {
  allFailedWithTies: 'madeUp',
  alphaParticles: 'berkson1966',
  ballBearings: 'liebleinZelen1956',
  bearingCages: 'abernethyEtAl1983',
  censoredTest: 'nistHandbook',
  fleetFewFailures: 'madeUp',
  fleetLateRecords: 'madeUp',
  fleetThreeSites: 'madeUp',
  fleetWholeMonths: 'madeUp',
  generatorFans: 'nelson1982',
  glassCapacitors: 'zelen1959',
  heatExchangerTubes: 'meekerEscobar1998',
  leukaemiaMaintenance: 'miller1981',
  locomotiveControls: 'nelson1982',
  noFailures: 'madeUp',
  oneFailureAgeNothingOlder: 'madeUp',
  oneFailureAgeOlderSurvivors: 'madeUp',
  radiotherapyArm: 'beadleEtAl1984',
  threeOfAThousand: 'madeUp',
  turbineWheels: 'nelson1982',
  twoUnitsFailed: 'madeUp',
};
