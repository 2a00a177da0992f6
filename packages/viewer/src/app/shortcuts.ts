import { mirrorAxesOf } from '../state/mirror.ts';
import { undo } from '../state/undo.ts';
import type { Workbench } from '../state/workbench.ts';
import { saveModel } from './save-file.ts';

/** A key of the page: what it does, and how it is told. The one table of them; the sheet of keys shows it. */
export interface Shortcut {
  /** As `KeyboardEvent.key` has it, letters small; `mod+` is Ctrl, or Cmd on a Mac. */
  readonly keys: readonly string[];
  readonly what: string;
  readonly group: 'Head' | 'View' | 'Go to';
  run(workbench: Workbench): void;
}

/** A key that a part of the page takes itself while it has the focus; told only. */
interface LocalKey {
  readonly keys: readonly string[];
  readonly what: string;
}

const focus = (selector: string) => (): void => document.querySelector<HTMLElement>(selector)?.focus();

/** Keys without Ctrl act only outside of fields, and can be switched off in the sheet. */
export const SHORTCUTS: readonly Shortcut[] = [
  {
    keys: ['n'],
    what: 'New head from few questions',
    group: 'Head',
    run: ({ view }) => view.setState({ dialog: 'start' }),
  },
  {
    keys: ['mod+o'],
    what: 'Open a model file',
    group: 'Head',
    run: () => document.querySelector<HTMLInputElement>('[data-testid="open-file"]')?.click(),
  },
  {
    keys: ['mod+s'],
    what: 'Save the model file',
    group: 'Head',
    run: ({ head }) => saveModel(head.getState().model),
  },
  { keys: ['mod+z'], what: 'Undo', group: 'Head', run: undo },
  { keys: ['mod+shift+z', 'mod+y'], what: 'Redo', group: 'Head', run: ({ history }) => history.redo() },
  {
    keys: ['h'],
    what: 'Show the whole head',
    group: 'View',
    run: ({ view }) => view.setState(({ homeCalls }) => ({ homeCalls: homeCalls + 1 })),
  },
  {
    keys: ['a'],
    what: 'From above, or in three dimensions',
    group: 'View',
    run: ({ view }) => view.setState(({ view: now }) => ({ view: now === 'above' ? 'perspective' : 'above' })),
  },
  {
    keys: ['t'],
    what: 'Colours: bow, or tension',
    group: 'View',
    run: ({ view }) =>
      view.setState(({ quantity }) => ({ quantity: quantity === 'tension' ? 'deviation' : 'tension' })),
  },
  {
    keys: ['m'],
    what: 'Mirror: what lies opposite moves along, or not',
    group: 'Head',
    run: ({ view, head }) => {
      const { model } = head.getState();
      const on = mirrorAxesOf(view.getState().mirror, model) !== null;
      view.setState({ mirror: on ? 'off' : (mirrorAxesOf(null, model) ?? 'both') });
    },
  },
  {
    keys: ['g'],
    what: 'Numbers of the case shown',
    group: 'View',
    run: ({ view }) => view.setState(({ numbers }) => ({ numbers: !numbers })),
  },
  { keys: ['v'], what: 'The verdict', group: 'Go to', run: focus('[data-testid="verdict"]') },
  {
    keys: ['f'],
    what: 'The first fastener on the head',
    group: 'Go to',
    run: focus('[data-testid^="fastener-"]:is(button)'),
  },
  { keys: ['r'], what: 'The recipe', group: 'Go to', run: focus('[data-testid="fold-Body"]') },
  { keys: ['?'], what: 'This sheet', group: 'Go to', run: ({ view }) => view.setState({ dialog: 'keys' }) },
];

/** Keys of a part of the page, by where they act. */
export const LOCAL_KEYS: Readonly<Record<string, readonly LocalKey[]>> = {
  'On a fastener of the head': [
    { keys: ['arrow keys'], what: 'Move it by 0.5 mm' },
    { keys: ['shift+arrow keys'], what: 'Move it by 0.1 mm' },
    { keys: ['escape'], what: 'Take the move back' },
  ],
  'In a number': [
    { keys: ['up', 'down'], what: 'A step more, a step less' },
    { keys: ['shift+up', 'shift+down'], what: 'A tenth of that' },
    { keys: ['escape'], what: 'Back to the value of the head' },
  ],
  Everywhere: [
    { keys: ['tab', 'shift+tab'], what: 'To the next, to the one before' },
    { keys: ['enter', 'space'], what: 'Press the button' },
    { keys: ['escape'], what: 'Close what lies over the page' },
  ],
};

/** The shortcut that a key press means; `null` for none. */
export function shortcutFor(event: KeyboardEvent, single: boolean): Shortcut | null {
  const mod = event.ctrlKey || event.metaKey;
  const key = event.key.toLowerCase();
  if (event.altKey || (!mod && (!single || isField(event.target)))) return null;
  // A sign such as ? needs the shift key on many keyboards, so it does not count for one.
  const shift = event.shiftKey && mod;
  const pressed = `${mod ? 'mod+' : ''}${shift ? 'shift+' : ''}${key}`;
  return SHORTCUTS.find(({ keys }) => keys.includes(pressed)) ?? null;
}

/** Where a letter is text, or chooses from a list. */
function isField(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable ||
      target.matches('input:not([type="checkbox"], [type="radio"], [type="file"]), select, textarea, [role="menu"] *'))
  );
}
