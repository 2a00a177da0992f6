import { forceDigits } from '../format/number.ts';
import type { Solved } from '../state/run-store.ts';
import { leastContact, type ShownContact } from '../state/shown-contact.ts';
import { useEarlier } from '../state/use-workbench.ts';
import styles from './labels.module.css';
import { useStageFrame } from './stage-frame.ts';

interface ContactLabelsProps {
  readonly solved: Solved;
  readonly contact: ShownContact | null;
  /** Of the face, mm. */
  readonly z: number;
}

/** Name of each site and the least force that its probes keep at the board. */
export function ContactLabels({ solved, contact, z }: ContactLabelsProps) {
  const stage = useStageFrame();
  const earlier = useEarlier();
  const least = solved.model.limits.contactForce ?? 0;
  const worst = contact === null ? null : leastContact(contact);
  return (
    <ul
      className={styles.layer}
      aria-label={`Least contact force of each site${earlier ? ', of the last good answer' : ''}`}
    >
      {solved.result.sites.map(({ name, centre }) => {
        const left = contact?.left.get(name) ?? null;
        const over = left !== null && (left < least || left === 0);
        return (
          <li
            key={name}
            ref={(element) => {
              if (element === null) return;
              stage.labels.set(`site ${name}`, {
                element,
                kind: 'site',
                at: centre,
                z,
                weight: left === null ? 0 : -left,
              });
              stage.redraw();
              return () => {
                stage.labels.delete(`site ${name}`);
              };
            }}
            className={styles.site}
            data-testid={`contact-${name}`}
            data-stale={earlier || undefined}
            data-over={over || undefined}
            data-worst={name === worst || undefined}
          >
            <span className={styles.name}>{name}</span>
            <span className={styles.bow}>{left === null ? 'not known' : forceDigits(left)}</span>
            <span className={styles.brief} aria-hidden="true">
              {left === null ? '?' : forceDigits(left).replace(/^0(?=\.)/, '')}
            </span>
            <span className={styles.least} aria-hidden="true">
              {left === null ? '?' : left.toFixed(left < 1 ? 2 : 0).replace(/^0/, '')}
            </span>
            {left !== null && <span className={styles.spoken}> newtons{over ? ', too little' : ''}</span>}
          </li>
        );
      })}
    </ul>
  );
}
