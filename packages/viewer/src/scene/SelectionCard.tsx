import type { HeadModel } from '@flathead/solver';
import { Icon } from '../app/icons.tsx';
import { seatHeight } from '../buffers/seat-height.ts';
import { beginGrip, type Grip, gripsOf, indexOf, thingOf } from '../state/grips.ts';
import { cornerAt, pitchOf } from '../state/pitch-edit.ts';
import { propose } from '../state/propose.ts';
import { valueAt } from '../state/set-value.ts';
import { copyThing, removeThing } from '../state/things.ts';
import { useModel, usePointer, useWorkbench } from '../state/use-workbench.ts';
import { CardField } from './CardField.tsx';
import styles from './card.module.css';
import { useStageFrame } from './stage-frame.ts';

/** Beside the chosen thing: its place and size to type, copy and remove. Out of the way while it is dragged. */
export function SelectionCard() {
  const workbench = useWorkbench();
  const { pointer, head, history } = workbench;
  const stage = useStageFrame();
  const model = useModel((model) => model);
  const selected = usePointer((state) => state.selected);
  const dragging = usePointer((state) => state.dragged !== null);
  const typed = usePointer((state) => state.typed);
  const grip = selected === null ? null : gripOf(model, selected);
  if (grip === null || dragging) return null;
  const { key, at, z, hangs } = grip;
  const [kind] = key.split(' ');
  const thing = thingOf(key);
  const pitch = key === 'pitch' ? pitchOf(model) : null;
  const leave = (): void => stage.labels.get(key)?.element.focus();
  const close = (): void => pointer.setState({ selected: null, typed: null });

  const toPlace = ([x, y]: readonly number[]): string | null => {
    const wanted = pitch ? cornerAt(model, [x, y]) : ([x, y] as const);
    const move = beginGrip(workbench, key);
    move.to(wanted, 0);
    move.end();
    const now = gripOf(head.getState().model, key)?.at ?? wanted;
    const short = Math.hypot(now[0] - wanted[0], now[1] - wanted[1]) > 2e-3;
    return short ? (pitch ? 'Kept so that probe fields do not overlap.' : 'Kept where it can be.') : null;
  };
  const toValue =
    (path: string) =>
    (values: readonly number[]): string | null => {
      const proposal = propose(head.getState().model, path, values.length === 1 ? values[0] : [...values]);
      if (proposal.ok) history.edit(() => proposal.model);
      return proposal.ok ? null : proposal.message;
    };
  const sizes = sizesOf(model, key);
  const place = grip.form !== 'edge';

  return (
    <section
      key={key}
      ref={(element) => {
        if (element === null) return;
        stage.labels.set('card', { element, kind: 'card', at, z, still: !hangs, weight: 0 });
        stage.redraw();
        return () => {
          stage.labels.delete('card');
        };
      }}
      className={styles.card}
      aria-label={grip.name}
      data-testid="card"
    >
      <header className={styles.head}>
        <strong className={styles.title}>{grip.name}</strong>
        {kind !== 'pitch' && !(grip.form === 'edge' && !isFree(model, key)) && (
          <button
            type="button"
            className={styles.button}
            data-testid="card-copy"
            onClick={() => copyThing(workbench, thing)}
          >
            Copy
          </button>
        )}
        {kind !== 'pitch' && (
          <button
            type="button"
            className={styles.button}
            data-testid="card-remove"
            onClick={() => removeThing(workbench, thing)}
          >
            Remove
          </button>
        )}
        <button type="button" className={styles.close} aria-label="Close" onClick={close}>
          <Icon name="cross" size={12} />
        </button>
      </header>
      {place && (
        <CardField
          key={`place ${typed}`}
          label={pitch ? 'pitch x, y' : 'x, y'}
          name={pitch ? 'Site pitch, x and y' : `Place of ${grip.name}, x and y`}
          testId="card-place"
          values={pitch ?? at.map((value) => Math.round(value * 1000) / 1000)}
          take={toPlace}
          typed={typed}
          leave={leave}
        />
      )}
      {sizes.map(({ path, label }, i) => (
        <CardField
          key={place ? path : `${path} ${typed}`}
          label={label}
          name={`${grip.name}, ${label}`}
          testId={`card-${label.replaceAll(' ', '-').replace(',', '')}`}
          values={numbersAt(model, path)}
          take={toValue(path)}
          typed={!place && i === 0 ? typed : null}
          leave={leave}
        />
      ))}
      {pitch && model.sites.skip !== undefined && (
        <p className={styles.note}>Spaced by skipped dies. A change here spaces the sites by their pitch instead.</p>
      )}
    </section>
  );
}

/** The grip of a key, that of a fastener included; `null` when it is no longer there. */
function gripOf(model: HeadModel, key: string): Grip | null {
  if (!key.startsWith('fastener')) return gripsOf(model, key).find((grip) => grip.key === key) ?? null;
  const fastener = model.fasteners[indexOf(key)];
  if (fastener === undefined) return null;
  const { name, at } = fastener;
  return { key, form: 'whole', name: `Fastener ${name}`, at, z: seatHeight(model, at), hangs: true };
}

function isFree({ frame }: HeadModel, key: string): boolean {
  const rib = frame?.ribs?.[indexOf(key)];
  return rib !== undefined && 'from' in rib;
}

function sizesOf(model: HeadModel, key: string): { readonly path: string; readonly label: string }[] {
  const index = indexOf(key);
  if (key.startsWith('rib')) return [{ path: `frame.ribs.${index}.width`, label: 'width' }];
  if (!key.startsWith('keepOut')) return [];
  const path = `keepOuts.${index}`;
  const shape = model.keepOuts?.[index]?.shape;
  return [
    ...(shape && 'rectangle' in shape ? [{ path: `${path}.shape.rectangle`, label: 'width, height' }] : []),
    ...(shape && 'circle' in shape ? [{ path: `${path}.shape.circle`, label: 'diameter' }] : []),
    { path: `${path}.clearance`, label: 'clearance' },
  ];
}

function numbersAt(model: HeadModel, path: string): number[] {
  const value = valueAt(model, path);
  return [value ?? 0].flat().filter((item): item is number => typeof item === 'number');
}
