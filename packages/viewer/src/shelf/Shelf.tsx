import { useMediaQuery } from '@mantine/hooks';
import { Icon } from '../app/icons.tsx';
import { useView, useWorkbench } from '../state/use-workbench.ts';
import { withVariantAt } from '../state/workbook.ts';
import styles from './shelf.module.css';
import { useBook, useCompared } from './use-shelf.ts';
import { VariantCard } from './VariantCard.tsx';
import { VariantVerdict } from './VariantVerdict.tsx';
import { duplicate } from './variant-actions.ts';

/** Pages with no room for the cards and the section at once. */
const LOW = '(max-height: 879px)';

/** The variants side by side, under the stage: folded to one line, or as cards. */
export default function Shelf() {
  const workbench = useWorkbench();
  const { history, view } = workbench;
  const { variants, bench } = useBook();
  const compared = useCompared();
  const chosen = useView(({ shelf }) => shelf);
  const comparing = useView((state) => state.comparing);
  const section = useView(({ sectionOpen }) => sectionOpen);
  // On a low page the section takes the place of the cards, so that the stage keeps its own.
  const low = useMediaQuery(LOW) ?? false;
  const several = variants.length > 1;
  const open = (chosen ?? several) && !(low && section);
  return (
    <section className={styles.shelf} aria-label="Shelf of variants" data-testid="shelf">
      <div className={styles.head}>
        <button
          type="button"
          className={styles.toggle}
          aria-expanded={open}
          data-testid="shelf-toggle"
          onClick={() => view.setState({ shelf: !open, ...(low && !open && { sectionOpen: false }) })}
        >
          <Icon name={open ? 'down' : 'up'} size={14} />
          Shelf
          <span className={styles.count}>{variants.length}</span>
        </button>
        {!open && (
          <ul className={styles.chips}>
            {variants.map(({ id, model }) => (
              <li key={id}>
                <button
                  type="button"
                  className={styles.chip}
                  ref={id === bench ? inSight : undefined}
                  aria-current={id === bench}
                  onClick={() => history.putOnBench(id)}
                >
                  <ChipName name={model.name} />
                  <VariantVerdict model={model} short />
                </button>
              </li>
            ))}
          </ul>
        )}
        <span className={styles.gap} />
        <button
          type="button"
          className={styles.act}
          data-testid="duplicate"
          title="A copy of the head on the bench, to be changed"
          onClick={() => duplicate(workbench, bench)}
        >
          <Icon name="copy" size={15} /> Duplicate
        </button>
        <button
          type="button"
          className={styles.act}
          data-testid="compare"
          aria-pressed={comparing && several}
          disabled={!several}
          title={compared ? `${compared[1].model.name} against ${compared[0].model.name}` : 'Duplicate the head first'}
          onClick={() => view.setState({ comparing: !comparing })}
        >
          <Icon name="compare" size={15} /> Compare
        </button>
      </div>
      {open && (
        <ul className={styles.cards}>
          {variants.map((variant, place) => (
            <VariantCard
              key={variant.id}
              variant={variant}
              onDropped={(dragged) => history.editBook((book) => withVariantAt(book, dragged, place))}
            />
          ))}
        </ul>
      )}
    </section>
  );
}

/** Last letters of a name that tell variants apart. */
const TAIL = 8;

/** A name that is cut in the middle where there is no room: variants differ in their ends. */
function ChipName({ name }: { name: string }) {
  const cut = Math.max(0, name.length - TAIL);
  return (
    <span className={styles.chipName} title={name}>
      <span>{name.slice(0, cut)}</span>
      <span>{name.slice(cut)}</span>
    </span>
  );
}

/** Scrolls the chip of the head on the bench into view. */
function inSight(chip: HTMLElement | null): void {
  chip?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
}
