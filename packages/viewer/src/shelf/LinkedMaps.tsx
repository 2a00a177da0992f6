import { type KeyboardEvent, type PointerEvent, type ReactNode, useState } from 'react';
import styles from './compare.module.css';

/** What of the heads is in sight, the same in all maps: factor, and place in px at a factor of one. */
interface Sight {
  readonly zoom: number;
  readonly x: number;
  readonly y: number;
}

const WHOLE: Sight = { zoom: 1, x: 0, y: 0 };
const FACTOR = 1.5;
const MOST = 8;
const STEP = 24;

/** Maps beside each other that are moved and enlarged together, by mouse or keys. */
export function LinkedMaps({ maps }: { maps: readonly { readonly title: ReactNode; readonly map: ReactNode }[] }) {
  const [{ zoom, x, y }, setSight] = useState(WHOLE);
  const [held, setHeld] = useState<{ readonly x: number; readonly y: number } | null>(null);
  const by = (factor: number): void =>
    setSight((now) => {
      const next = Math.min(MOST, Math.max(1, now.zoom * factor));
      return next === 1 ? WHOLE : { ...now, zoom: next };
    });
  const pan = (dx: number, dy: number): void =>
    setSight((now) => ({ ...now, x: now.x + dx / now.zoom, y: now.y + dy / now.zoom }));
  const keys = (event: KeyboardEvent): void => {
    const { key } = event;
    const dx = key === 'ArrowLeft' ? STEP : key === 'ArrowRight' ? -STEP : 0;
    const dy = key === 'ArrowUp' ? STEP : key === 'ArrowDown' ? -STEP : 0;
    if (key === '+' || key === '=') by(FACTOR);
    else if (key === '-') by(1 / FACTOR);
    else if (key === '0') setSight(WHOLE);
    else if (zoom > 1 && (dx !== 0 || dy !== 0)) pan(dx, dy);
    else return;
    event.preventDefault();
  };
  const moved = (event: PointerEvent): void => {
    if (held === null || zoom === 1) return;
    pan(event.clientX - held.x, event.clientY - held.y);
    setHeld({ x: event.clientX, y: event.clientY });
  };
  return (
    <>
      <div className={styles.maps} data-zoomed={zoom > 1 || undefined}>
        {maps.map(({ title, map }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the maps have their fixed places
          <figure key={i} className={styles.map}>
            <figcaption>{title}</figcaption>
            {/* biome-ignore lint/a11y/useSemanticElements: no group of fields */}
            <div
              className={styles.frame}
              role="group"
              aria-label="Map: plus and minus enlarge all maps, arrow keys move them, 0 shows all"
              // biome-ignore lint/a11y/noNoninteractiveTabindex: the keys move the maps
              tabIndex={0}
              onKeyDown={keys}
              onPointerDown={(event) => setHeld({ x: event.clientX, y: event.clientY })}
              onPointerMove={moved}
              onPointerUp={() => setHeld(null)}
              onPointerLeave={() => setHeld(null)}
            >
              <div
                className={styles.moved}
                data-testid="linked-map"
                style={{ transform: `scale(${zoom}) translate(${x}px, ${y}px)` }}
              >
                {map}
              </div>
            </div>
          </figure>
        ))}
      </div>
      <p className={styles.zoom}>
        <button
          type="button"
          className={styles.small}
          aria-label="Smaller"
          disabled={zoom === 1}
          onClick={() => by(1 / FACTOR)}
        >
          −
        </button>
        <button
          type="button"
          className={styles.small}
          aria-label="Larger"
          disabled={zoom >= MOST}
          onClick={() => by(FACTOR)}
        >
          +
        </button>
        <span>{zoom === 1 ? 'all of the head' : `×${zoom.toFixed(1)}, all maps together`}</span>
      </p>
    </>
  );
}
