import type { Share } from '@flathead/solver';
import { createStore } from 'zustand/vanilla';

/** What uses up planarity beside the bow, as typed. */
export interface Contributor {
  readonly name: string;
  /** um */
  readonly value: string;
  readonly adds: Share['adds'];
}

/** The budget of a head, as typed. */
export interface Budget {
  /** um */
  readonly limit: string;
  readonly contributors: readonly Contributor[];
}

interface BudgetState {
  /** By the name of the head, the last used last. */
  readonly byHead: Readonly<Record<string, Budget>>;
}

const KEY = 'flathead-budget';
const MOST_HEADS = 60;
export const MOST_CONTRIBUTORS = 60;

/** To begin with: magnitudes of common practice, no source. */
const BEGIN: Budget = {
  limit: '90',
  contributors: [
    { name: 'Tilt of the mounting', value: '10', adds: 'systematic' },
    { name: 'Machining', value: '12', adds: 'independent' },
    { name: 'Tip length', value: '20', adds: 'independent' },
    { name: 'Board', value: '30', adds: 'independent' },
  ],
};

/** The budgets of all heads, kept in the browser: they belong to the setup, not to the model. */
export function createBudgetStore(storage: Pick<Storage, 'getItem' | 'setItem'> | null) {
  const store = createStore<BudgetState>()(() => ({ byHead: stored(storage) }));
  store.subscribe(({ byHead }) => {
    try {
      storage?.setItem(KEY, JSON.stringify(byHead));
    } catch {
      // Storage that is full or closed keeps nothing; this visit has the budget all the same.
    }
  });
  return store;
}

export type BudgetStore = ReturnType<typeof createBudgetStore>;

/** Budget of a head; a head without its own begins with the one written last. */
export function budgetOf({ byHead }: BudgetState, head: string): Budget {
  return Object.hasOwn(byHead, head) ? byHead[head] : (Object.values(byHead).at(-1) ?? BEGIN);
}

export function writeBudget(store: BudgetStore, head: string, change: (budget: Budget) => Budget): void {
  store.setState((state) => {
    const { [head]: _, ...others } = state.byHead;
    const kept = Object.entries(others).slice(1 - MOST_HEADS);
    return { byHead: Object.fromEntries([...kept, [head, change(budgetOf(state, head))]]) };
  });
}

function stored(storage: Pick<Storage, 'getItem'> | null): Record<string, Budget> {
  try {
    const found: unknown = JSON.parse(storage?.getItem(KEY) ?? '{}');
    if (typeof found !== 'object' || found === null) return {};
    return Object.fromEntries(Object.entries(found).map(([head, budget]) => [head, readable(budget)]));
  } catch {
    return {};
  }
}

/** A budget of whatever was stored; what is no text is empty, what is no contributor is left out. */
function readable(budget: unknown): Budget {
  const of = (from: unknown, key: string): unknown =>
    typeof from === 'object' && from !== null ? Reflect.get(from, key) : undefined;
  const text = (value: unknown): string => (typeof value === 'string' ? value.slice(0, 200) : '');
  const list = of(budget, 'contributors');
  return {
    limit: text(of(budget, 'limit')),
    contributors: (Array.isArray(list) ? list : []).slice(0, MOST_CONTRIBUTORS).map((one: unknown) => ({
      name: text(of(one, 'name')),
      value: text(of(one, 'value')),
      adds: of(one, 'adds') === 'systematic' ? 'systematic' : 'independent',
    })),
  };
}
