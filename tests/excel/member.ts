import { Refusal } from './workbookModel.ts';

/**
 * An object of the program as the library reaches it: what can be read, set, walked to and called, by the names on
 * the wire. What is not listed is not modelled, and asking for it fails.
 */
export type Member = {
  readonly of: string;
  /** By which the library finds it again in its collection. */
  readonly id?: string;
  readonly get?: Readonly<Record<string, () => unknown>>;
  readonly set?: Readonly<Record<string, (value: never) => void>>;
  readonly child?: Readonly<Record<string, () => Member>>;
  readonly call?: Readonly<Record<string, (...given: never[]) => unknown>>;
  /** What a collection holds, and how one of it is found. */
  readonly items?: () => readonly Member[];
  readonly item?: (key: unknown) => Member | null;
};

/** Whether an answer is an object of the program. */
export function isMember(value: unknown): value is Member {
  return typeof value === 'object' && value !== null && 'of' in value;
}

/** The answer of the program for an object that does not exist. */
export function notFound(what: string): never {
  throw new Refusal('ItemNotFound', `the requested resource doesn't exist: ${what}`);
}

/** What the model has no answer for: the test must extend the model, or the code must not ask. */
export function notModelled(what: string): never {
  throw new Refusal('NotModelled', `${what} is not modelled`);
}

/** An object whose properties are only remembered, under a path of their own. */
export function bag(
  of: string,
  remember: (path: string, value: unknown) => void,
  path: string,
  properties: readonly string[],
  children: Readonly<Record<string, readonly string[]>> = {},
): Member {
  const lower = (name: string): string => path + name[0]!.toLowerCase() + name.slice(1);
  const set = properties.map((name) => [name, (value: unknown) => remember(lower(name), value)]);
  const child = Object.entries(children).map(([name, inner]) => [
    name,
    () => bag(`${of}.${name}`, remember, `${lower(name)}/`, inner),
  ]);
  return { of, set: Object.fromEntries(set), child: Object.fromEntries(child) };
}
