import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import type { Session, View } from '../session.ts';
import { VIEW_DID_NOT_COME } from '../text/paneText.ts';
import { InventoryView } from './inventory/inventoryView.tsx';

type ViewComponent = ComponentType<{ readonly session: Session }>;

// Each is a script of its own: whoever reads the inventory does not wait for the statistics.
const FETCH = {
  inventory: () => Promise.resolve(InventoryView),
  bench: async () => (await import(/* webpackChunkName: "bench" */ './bench/benchView.tsx')).BenchView,
  life: async () => (await import(/* webpackChunkName: "life" */ './life/lifeView.tsx')).LifeView,
  plan: async () => (await import(/* webpackChunkName: "plan" */ './plan/planView.tsx')).PlanView,
} as const satisfies Record<View, () => Promise<ViewComponent>>;

const arrived = signal<Readonly<Partial<Record<View, ViewComponent>>>>({ inventory: InventoryView });

/** The view that is open, or undefined until its script has come; the caller is drawn anew then. */
export function openView(session: Session): ViewComponent | undefined {
  const view = session.view.value;
  const Open = arrived.value[view];
  if (Open === undefined) void fetchView(session, view);
  return Open;
}

const underway = new Set<View>();

async function fetchView({ notice }: Session, view: View): Promise<void> {
  if (underway.has(view)) return;
  underway.add(view);
  try {
    const Open = await FETCH[view]();
    arrived.value = { ...arrived.value, [view]: Open };
  } catch {
    notice.value = { kind: 'problem', text: VIEW_DID_NOT_COME };
  } finally {
    underway.delete(view);
  }
}
