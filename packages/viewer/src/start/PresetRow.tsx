import type { Preset } from './presets.ts';
import styles from './start.module.css';
import type { Answers } from './use-head-draft.ts';

interface PresetRowProps {
  /** What is chosen. */
  readonly label: string;
  readonly presets: readonly Preset[];
  readonly answers: Answers;
}

/** Starting points side by side; the one that the answers agree with is marked. */
export function PresetRow({ label, presets, answers: { draft, choose } }: PresetRowProps) {
  return (
    <fieldset className={styles.presets} aria-label={label}>
      {presets.map((preset) => {
        const filled = preset.fill(draft);
        return (
          <button
            key={preset.label}
            type="button"
            className={styles.preset}
            aria-pressed={alike(filled, draft)}
            onClick={() => choose(filled)}
          >
            {preset.label}
            {preset.note !== undefined && <span className={styles.presetNote}> {preset.note}</span>}
          </button>
        );
      })}
    </fieldset>
  );
}

/** The same answers, in whatever order they were given. */
function alike(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [mine, other] = [Object.entries(a), new Map(Object.entries(b))];
  return mine.length === other.size && mine.every(([key, value]) => other.has(key) && alike(value, other.get(key)));
}
