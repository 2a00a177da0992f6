import styles from './skip-links.module.css';

const PLACES = [
  { label: 'Skip to the verdict', selector: '[data-testid="verdict"]' },
  { label: 'Skip to the fasteners on the head', selector: '[data-testid^="fastener-"]:is(button)' },
];

/** First in the order of the keyboard, seen only with the focus: past the bar and the recipe. */
export function SkipLinks() {
  return (
    <nav className={styles.links} aria-label="Skip">
      {PLACES.map(({ label, selector }) => (
        <button
          key={label}
          type="button"
          className={styles.link}
          onClick={() => document.querySelector<HTMLElement>(selector)?.focus()}
        >
          {label}
        </button>
      ))}
    </nav>
  );
}
