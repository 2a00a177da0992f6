import styles from './start.module.css';

/** What is what in the drawing of a drafted head. */
export function PlanKey({ framed, ribbed }: { framed: boolean; ribbed: boolean }) {
  const things = [
    { name: 'body', sample: <rect className={styles.body} x="0.5" y="0.5" width="13" height="10" rx="1.5" /> },
    ...(framed
      ? [
          {
            name: ribbed ? 'frame and ribs' : 'frame',
            sample: <rect className={styles.frame} x="0.5" y="0.5" width="13" height="10" rx="1.5" />,
          },
          {
            name: 'window of the frame',
            sample: <rect className={styles.window} x="0.5" y="0.5" width="13" height="10" rx="1.5" />,
          },
        ]
      : []),
    { name: 'probe field', sample: <rect className={styles.site} x="2" y="0.5" width="10" height="10" /> },
    { name: 'screw', sample: <circle className={styles.screw} cx="7" cy="5.5" r="4.5" /> },
  ];
  return (
    <ul className={styles.key}>
      {things.map(({ name, sample }) => (
        <li key={name}>
          <svg viewBox="0 0 14 11" width="14" height="11" aria-hidden="true">
            {sample}
          </svg>
          {name}
        </li>
      ))}
      <li>sizes in mm</li>
    </ul>
  );
}
