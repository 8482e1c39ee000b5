import type { Member } from './member.ts';
import { isMember, notModelled } from './member.ts';
import { Refusal } from './workbookModel.ts';

type Arguments = { readonly Arguments?: unknown[]; readonly ReferencedObjectPathIds?: number[] };

type ObjectPath = {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: Arguments;
};

type Action = {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: Arguments;
  readonly QueryInfo?: { readonly Select?: string[] };
};

/** One request of the library: what is to be done, and the paths to the objects it is done to. */
export type Request = {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
};

/** What the program answers: results of the actions up to the one that failed. */
export type Response = {
  Results: { readonly ActionId: number; readonly Value: unknown }[];
  Error?: { Code: string; Message: string; Location: string; ActionIndex: number };
};

const PATH = { root: 1, service: 2, method: 3, property: 4, indexer: 5, reference: 6 } as const;
const ACTION = { instantiate: 1, query: 2, method: 3, setProperty: 4, trace: 5 } as const;

/** Objects that a caller keeps from one request to the next. */
export type KeptObjects = Map<string, Member>;

/** Does what a request asks, in its order, and stops at the first action that the program refuses. */
export function answerRequest(
  request: Request,
  root: Member,
  services: (name: string) => Member,
  kept: KeptObjects,
): Response {
  const reach = pathsOf(request, root, services, kept);
  const response: Response = { Results: [] };
  request.Actions.forEach((action, index) => {
    if (response.Error !== undefined) return;
    try {
      response.Results.push({ ActionId: action.Id, Value: act(action, reach, kept) });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const Location = action.Name === '' ? 'request' : action.Name;
      response.Error = { Code: error.code, Message: error.message, Location, ActionIndex: index };
    }
  });
  return response;
}

type Reach = (id: number) => Member | null;

function pathsOf(
  request: Request,
  root: Member,
  services: (name: string) => Member,
  kept: KeptObjects,
): Reach {
  const reached = new Map<number, Member | null>();
  const reach: Reach = (id) => {
    const known = reached.get(id);
    if (known !== undefined) return known;
    const found = resolve(request.ObjectPaths[id]!);
    reached.set(id, found);
    return found;
  };
  const resolve = (path: ObjectPath): Member | null => {
    if (path.ObjectPathType === PATH.root) return root;
    if (path.ObjectPathType === PATH.service) return services(path.Name);
    if (path.ObjectPathType === PATH.reference) return kept.get(path.Name) ?? refuseLost(path.Name);
    const parent = reach(path.ParentObjectPathId!);
    return parent === null ? null : step(parent, path, given(path.ArgumentInfo, reach));
  };
  return reach;
}

function refuseLost(reference: string): never {
  throw new Refusal('InvalidReference', `the object ${reference} is no longer kept`);
}

function step(parent: Member, { ObjectPathType, Name }: ObjectPath, args: unknown[]): Member | null {
  if (ObjectPathType === PATH.property) return (parent.child?.[Name] ?? missing(parent, Name))();
  if (ObjectPathType === PATH.indexer) return (parent.item ?? missing(parent, 'getItem'))(args[0]);
  const answer = callOf(parent, Name)(...(args as never[]));
  return answer === null || isMember(answer) ? answer : notModelled(`${parent.of}.${Name} as an object`);
}

const missing = (parent: Member, name: string): never => notModelled(`${parent.of}.${name}`);

function callOf(parent: Member, name: string): (...args: never[]) => unknown {
  if (name === 'GetItem' && parent.item !== undefined) return parent.item as never;
  return parent.call?.[name] ?? missing(parent, name);
}

function given(info: Arguments | undefined, reach: Reach): unknown[] {
  return (info?.Arguments ?? []).map((value, index) => {
    const reference = info?.ReferencedObjectPathIds?.[index] ?? 0;
    return reference === 0 ? value : reach(reference);
  });
}

function act(action: Action, reach: Reach, kept: KeptObjects): unknown {
  if (action.ActionType === ACTION.trace) return null;
  const target = reach(action.ObjectPathId);
  if (target === null) return null;
  const args = given(action.ArgumentInfo, reach);
  if (action.ActionType === ACTION.instantiate) return identity(target);
  if (action.ActionType === ACTION.query) return loaded(target, action.QueryInfo?.Select ?? []);
  if (action.ActionType === ACTION.setProperty)
    return (target.set?.[action.Name] ?? missing(target, action.Name))(args[0] as never);
  if (action.ActionType !== ACTION.method) return notModelled(`action ${action.ActionType}`);
  if (action.Name === '_KeepReference') return keep(target, kept);
  if (action.Name === '_RemoveReference')
    return void [...kept].forEach(([key, each]) => each === target && kept.delete(key));
  const answer = callOf(target, action.Name)(...(args as never[]));
  return isMember(answer) ? null : answer;
}

const references = new WeakMap<Member, string>();
let referenced = 0;

function keep(target: Member, kept: KeptObjects): void {
  referenced += 1;
  references.set(target, `kept-${referenced}`);
  kept.set(`kept-${referenced}`, target);
}

function identity(target: Member): Record<string, unknown> {
  const reference = references.get(target);
  return {
    ...(target.id !== undefined && { Id: target.id }),
    ...(reference !== undefined && { _ReferenceId: reference }),
  };
}

const onWire = (name: string): string => name[0]!.toUpperCase() + name.slice(1);

// A load without names would fetch everything; ours names what it needs.
function loaded(target: Member, select: readonly string[]): Record<string, unknown> {
  if (select.length === 0) return notModelled(`${target.of}.load without names`);
  if (target.items !== undefined)
    return {
      _Items: target.items().map((item) =>
        loaded(
          item,
          select.map((name) => name.replace(/^items\//, '')),
        ),
      ),
    };
  const answer = identity(target);
  const inner = new Map<string, string[]>();
  for (const name of select) {
    const slash = name.indexOf('/');
    if (slash < 0) answer[onWire(name)] = (target.get?.[onWire(name)] ?? missing(target, name))();
    else inner.set(name.slice(0, slash), [...(inner.get(name.slice(0, slash)) ?? []), name.slice(slash + 1)]);
  }
  for (const [name, names] of inner) {
    const child = (target.child?.[onWire(name)] ?? missing(target, name))();
    answer[onWire(name)] = loaded(child, names);
  }
  return answer;
}
