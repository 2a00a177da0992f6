import { Icon } from '../app/icons.tsx';
import page from '../app/page.module.css';
import { patternFields } from './plans.ts';
import { BareNumber, ChoiceSetup, type Fields, NumberSetup } from './SetupFields.tsx';
import styles from './studies.module.css';

const COLUMNS = [
  ['columns', 'Along x'],
  ['rows', 'Along y'],
  ['skipX', 'Skip x'],
  ['skipY', 'Skip y'],
] as const;

/** Site patterns to compare, the die and the wafer. */
export function SitesSetup({ fields }: { fields: Fields }) {
  const count = Number(fields.text('patterns'));
  const numbers = (i: number): [number, number, number, number] => {
    const [columns, rows, x, y] = COLUMNS.map(([field]) => Number(fields.text(`${field}${i}`)) || 0);
    return [columns, rows, x, y];
  };
  const put = (i: number, pattern: readonly [number, number, number, number]): void => {
    for (const [field, text] of Object.entries(patternFields(i, ...pattern))) fields.type(field, text);
  };
  const remove = (i: number): void => {
    for (let k = i; k + 1 < count; k++) put(k, numbers(k + 1));
    fields.type('patterns', String(count - 1));
  };
  const add = (): void => {
    const [columns, rows, x, y] = numbers(count - 1);
    put(count, [columns, rows, x + 1, y]);
    fields.type('patterns', String(count + 1));
  };
  return (
    <>
      <table className={styles.patterns}>
        <thead>
          <tr>
            {COLUMNS.map(([field, label]) => (
              <th key={field} scope="col">
                {label}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: count }, (_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a pattern is its place
            <tr key={i}>
              {COLUMNS.map(([field, label]) => (
                <td key={field}>
                  <BareNumber {...{ fields }} field={`${field}${i}`} label={`${label}, pattern ${i + 1}`} />
                </td>
              ))}
              <td>
                <button
                  type="button"
                  className={page.bare}
                  disabled={count === 1}
                  aria-label={`Remove pattern ${i + 1}`}
                  onClick={() => remove(i)}
                >
                  <Icon name="cross" size={13} />
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <button type="button" className={styles.add} data-testid="add-pattern" onClick={add}>
        <Icon name="plus" size={13} /> Another pattern
      </button>
      <NumberSetup {...{ fields }} field="dieX" label="Die along x" unit="mm" />
      <NumberSetup {...{ fields }} field="dieY" label="Die along y" unit="mm" />
      <NumberSetup {...{ fields }} field="diameter" label="Wafer" unit="mm" />
      <NumberSetup {...{ fields }} field="edge" label="Edge not tested" unit="mm" />
      <ChoiceSetup
        {...{ fields }}
        field="fit"
        label="Head"
        options={[
          { value: 'follow', label: 'follows the pattern' },
          { value: 'keep', label: 'stays as it is' },
        ]}
      />
    </>
  );
}
