import { useState } from 'react';
import { Toggle } from '../panels/Toggle.tsx';
import styles from './keys-sheet.module.css';
import { PageDialog } from './PageDialog.tsx';
import { LOCAL_KEYS, SHORTCUTS } from './shortcuts.ts';
import { setSingleKeys, singleKeys } from './single-keys.ts';

const MAC = /mac|iphone|ipad/i.test(navigator.userAgent);

/** All keys of the page, from the table that they act by. */
export function KeysSheet({ onClose }: { onClose: () => void }) {
  const [single, setSingle] = useState(singleKeys);
  const groups = [...new Set(SHORTCUTS.map(({ group }) => group))];
  return (
    <PageDialog title="Keys" testId="keys-sheet" onClose={onClose}>
      <div className={styles.sheet}>
        <div className={styles.groups}>
          {groups.map((group) => (
            <Keys key={group} title={group} entries={SHORTCUTS.filter((shortcut) => shortcut.group === group)} />
          ))}
          {Object.entries(LOCAL_KEYS).map(([title, entries]) => (
            <Keys key={title} title={title} entries={entries} />
          ))}
        </div>
        <Toggle
          label="Keys without Ctrl act outside of fields"
          testId="single-keys"
          on={single}
          onChange={(on) => {
            setSingleKeys(on);
            setSingle(on);
          }}
        />
      </div>
    </PageDialog>
  );
}

function Keys({ title, entries }: { title: string; entries: readonly { keys: readonly string[]; what: string }[] }) {
  return (
    <section className={styles.group} aria-label={title}>
      <h3 className={styles.title}>{title}</h3>
      <dl className={styles.list}>
        {entries.map(({ keys, what }) => (
          <div key={what} className={styles.entry}>
            <dt>
              {keys.map((key, i) => (
                <span key={key}>
                  {i > 0 && ' or '}
                  <kbd className={styles.key}>{keyText(key)}</kbd>
                </span>
              ))}
            </dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

/** `mod+shift+z` as it is printed on a keyboard. */
function keyText(keys: string): string {
  return keys
    .split('+')
    .map((key) => (key === 'mod' ? (MAC ? 'Cmd' : 'Ctrl') : key.charAt(0).toUpperCase() + key.slice(1)))
    .join(' ');
}
