import styles from './verdict.module.css';

/** A criterion that was asked for and is not judged, yet or at all. */
export function UnjudgedCard({ title, awaited }: { title: string; awaited: boolean }) {
  return (
    <article className={styles.card}>
      <h3 className={styles.cardTitle}>{title}</h3>
      <p className={styles.unjudged}>
        {awaited ? 'Being judged.' : 'Not judged: what it needs is not known. See the remarks.'}
      </p>
    </article>
  );
}
