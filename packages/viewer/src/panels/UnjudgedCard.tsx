import styles from './verdict.module.css';

/** A criterion that was asked for and could not be judged. */
export function UnjudgedCard({ title }: { title: string }) {
  return (
    <article className={styles.card}>
      <h3 className={styles.cardTitle}>{title}</h3>
      <p className={styles.unjudged}>Not judged: what it needs is not known. See the remarks.</p>
    </article>
  );
}
