import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CDPSession, Page } from 'playwright-core';

type Profile = Awaited<ReturnType<typeof stopped>>;
type ProfileNode = Profile['nodes'][number];

/** The longest stretch in which the page's thread did nothing but our own work, and where its time went. */
export type LongestTask = { readonly milliseconds: number; readonly where: string };

export type Profiled = {
  /** The longest task counting our own code's time only. */
  readonly ours: LongestTask;
  /** The longest task, whosever. */
  readonly any: LongestTask;
  /** Seconds by function, the costliest first. */
  readonly costliest: readonly (readonly [string, number])[];
};

/** Follows the page's thread while `work` is done. The page must be built without shrinking: see moduleAt. */
export async function profiled(page: Page, folder: string, work: () => Promise<unknown>): Promise<Profiled> {
  const session = await page.context().newCDPSession(page);
  await session.send('Profiler.enable');
  await session.send('Profiler.setSamplingInterval', { interval: 1000 });
  await session.send('Profiler.start');
  await work();
  const profile = await stopped(session);
  await session.detach();
  return summary(profile, moduleFinder(folder));
}

async function stopped(session: CDPSession) {
  return (await session.send('Profiler.stop')).profile;
}

type ModuleOf = (node: ProfileNode) => string;

/** Which module a function stands in: the unshrunk script says before each module whose it is. */
function moduleFinder(folder: string): ModuleOf {
  const scripts = new Map<string, readonly (readonly [number, string])[]>();
  return ({ callFrame: { url, lineNumber } }) => {
    const path = /^https?:\/\/[^/]+\/(.*\.js)/.exec(url)?.[1];
    if (path === undefined) return '';
    if (!scripts.has(path)) scripts.set(path, modulesIn(readFileSync(join(folder, path), 'utf8')));
    return (
      scripts
        .get(path)!
        .filter(([line]) => line <= lineNumber)
        .at(-1)?.[1] ?? ''
    );
  };
}

const modulesIn = (script: string): (readonly [number, string])[] =>
  script.split('\n').flatMap((line, number): [number, string][] => {
    const module = /^(?:\/\*{3}\/ "|;\/\/ (?:\.\/)?)([^"]*?)(?:"|$)/.exec(line)?.[1];
    return module === undefined ? [] : [[number, module.replace(/^\.\//, '')]];
  });

const isOurs = (module: string): boolean =>
  /^(taskpane|src|functions)\/|node_modules\/(hucre|luxon)\//.test(module);

type Task = {
  total: number;
  ours: number;
  readonly by: Map<string, number>;
  readonly byOurs: Map<string, number>;
};
const newTask = (): Task => ({ total: 0, ours: 0, by: new Map(), byOurs: new Map() });

function summary({ nodes, samples, timeDeltas }: Profile, moduleOf: ModuleOf): Profiled {
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const parents = new Map(nodes.flatMap(({ id, children }) => (children ?? []).map((child) => [child, id])));
  const names = new Map(nodes.map((node) => [node.id, nameOf(node, byId, parents, moduleOf)]));
  const tasks = [newTask()];
  const all = new Map<string, number>();
  samples!.forEach((id, index) => {
    const time = (timeDeltas![index + 1] ?? 0) / 1000;
    const { callFrame } = byId.get(id)!;
    if (callFrame.functionName === '(idle)' || callFrame.functionName === '(program)') {
      if (tasks.at(-1)!.total > 0) tasks.push(newTask());
      return;
    }
    const [name, ours] = names.get(id)!;
    const task = tasks.at(-1)!;
    add(all, name, time);
    add(task.by, name, time);
    task.total += time;
    if (!ours) return;
    task.ours += time;
    add(task.byOurs, name, time);
  });
  const longest = (key: 'total' | 'ours'): Task => tasks.reduce((a, b) => (b[key] > a[key] ? b : a));
  const [any, ours] = [longest('total'), longest('ours')];
  return {
    any: { milliseconds: any.total, where: top(any.by) },
    ours: { milliseconds: ours.ours, where: top(ours.byOurs) },
    costliest: sorted(all).map(([name, time]) => [name, time / 1000]),
  };
}

// What the browser itself does, such as copying a message, counts for the function that asked for it.
function nameOf(
  node: ProfileNode,
  byId: ReadonlyMap<number, ProfileNode>,
  parents: ReadonlyMap<number, number>,
  moduleOf: ModuleOf,
): [string, boolean] {
  let at: ProfileNode | undefined = node;
  while (at !== undefined && moduleOf(at) === '') at = byId.get(parents.get(at.id) ?? -1);
  const module = at === undefined ? '' : moduleOf(at);
  const { functionName } = (at ?? node).callFrame;
  return [`${functionName || 'a function'} (${module.replace(/^.*node_modules\//, '')})`, isOurs(module)];
}

const add = (times: Map<string, number>, name: string, time: number): void =>
  void times.set(name, (times.get(name) ?? 0) + time);
const sorted = (times: ReadonlyMap<string, number>): [string, number][] =>
  [...times].sort(([, a], [, b]) => b - a);
const top = (times: ReadonlyMap<string, number>): string =>
  sorted(times)
    .slice(0, 3)
    .map(([name, time]) => `${name} ${time.toFixed(0)}`)
    .join(', ');
