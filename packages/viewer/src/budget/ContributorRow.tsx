import { NativeSelect } from '@mantine/core';
import { Icon } from '../app/icons.tsx';
import page from '../app/page.module.css';
import styles from './budget.module.css';
import { type BudgetLine, readMicrometres } from './budget-figures.ts';
import type { Contributor } from './budget-store.ts';
import { Room } from './Room.tsx';

/** A contributor as it is typed, and the room that the others leave it. */
export function ContributorRow({
  contributor: { name, value, adds },
  line,
  place,
  put,
  remove,
}: {
  contributor: Contributor;
  line: BudgetLine | undefined;
  place: number;
  put: (part: Partial<Contributor>) => void;
  remove: () => void;
}) {
  const bad = readMicrometres(value) === null;
  const title = name === '' ? `Contributor ${place}` : name;
  return (
    <tr data-testid={`budget-row-${place}`}>
      <th scope="row">
        <input
          className={styles.name}
          aria-label={`Name of contributor ${place}`}
          maxLength={200}
          value={name}
          onChange={(event) => put({ name: event.currentTarget.value })}
        />
      </th>
      <td className={styles.number}>
        <span className={styles.box} data-trouble={bad || undefined}>
          <input
            inputMode="decimal"
            data-testid={`budget-value-${place}`}
            aria-label={`${title}, µm`}
            aria-invalid={bad}
            title={bad ? `"${value}" is no number of 0 or more.` : undefined}
            value={value}
            onChange={(event) => put({ value: event.currentTarget.value })}
          />
        </span>
      </td>
      <td>
        <NativeSelect
          size="xs"
          className={styles.choice}
          aria-label={`How ${title} adds up`}
          data-testid={`budget-adds-${place}`}
          data={['systematic', 'independent']}
          value={adds}
          onChange={(event) => put({ adds: event.currentTarget.value === 'systematic' ? 'systematic' : 'independent' })}
        />
      </td>
      <Room line={line} />
      <td>
        <button type="button" className={page.bare} aria-label={`Remove ${title}`} onClick={remove}>
          <Icon name="cross" size={13} />
        </button>
      </td>
    </tr>
  );
}
