/** The public list of the core, in subject order, and nothing else. */
export * from './basics/outcome.ts';
export * from './basics/problemText.ts';
export * from './basics/units.ts';
export * from './basics/calendar.ts';
export * from './basics/solve.ts';
// label
// service
export * from './service/battery.ts';
// electrochemistry
// cranking
// storage
// life
export * from './life/lifeRecord.ts';
// planning
// inventory
// report
