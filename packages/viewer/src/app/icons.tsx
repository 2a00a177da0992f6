/** Strokes on a 20 x 20 grid. */
const STROKES = {
  open: 'M3 6.5V15a1.5 1.5 0 0 0 1.5 1.5h11A1.5 1.5 0 0 0 17 15V8a1.5 1.5 0 0 0-1.5-1.5H10L8.2 4H4.5A1.5 1.5 0 0 0 3 5.5z',
  save: 'M10 3v9.5M6.2 9 10 12.8 13.8 9M3.5 16.5h13',
  undo: 'M4 8h8a4.5 4.5 0 0 1 0 9H8M7.5 4.5 4 8l3.5 3.5',
  redo: 'M16 8H8a4.5 4.5 0 0 0 0 9h4M12.5 4.5 16 8l-3.5 3.5',
  sun: 'M10 6.5a3.5 3.5 0 1 0 0 7 3.5 3.5 0 0 0 0-7M10 2v1.6M10 16.4V18M2 10h1.6M16.4 10H18M4.3 4.3l1.2 1.2M14.5 14.5l1.2 1.2M4.3 15.7l1.2-1.2M14.5 5.5l1.2-1.2',
  moon: 'M16.5 12.2A7 7 0 0 1 7.8 3.5a7 7 0 1 0 8.7 8.7z',
  home: 'M3.5 7V3.5H7M13 3.5h3.5V7M16.5 13v3.5H13M7 16.5H3.5V13M8 10h4M10 8v4',
  mirror: 'M10 3v14M7.5 6 3 13.5h4.5zM12.5 6l4.5 7.5h-4.5z',
  plus: 'M10 4.5v11M4.5 10h11',
  cross: 'M5.5 5.5l9 9M14.5 5.5l-9 9',
  down: 'M5.5 8 10 12.5 14.5 8',
  pass: 'M5 10.5 8.5 14 15 6.5',
  marginal: 'M4 11.2c2-3.4 4-3.4 6-1.2s4 2.2 6-1.2',
  fail: 'M10 4.5v7M10 15.2v.3',
  print: 'M6 7V3.5h8V7M6 14H3.5V8.5A1.5 1.5 0 0 1 5 7h10a1.5 1.5 0 0 1 1.5 1.5V14H14M6 11.5h8v5H6z',
  stop: 'M6 6h8v8H6z',
  play: 'M7 5l8 5-8 5z',
  more: 'M5 10h.01M10 10h.01M15 10h.01',
  copy: 'M7.5 7.5h8v8h-8zM12.5 7.5v-3h-8v8h3',
  compare: 'M3.5 5.5h5.5v9H3.5zM11 5.5h5.5v9H11z',
  up: 'M5.5 12 10 7.5 14.5 12',
} as const;

export type IconName = keyof typeof STROKES;

/** A line icon in the colour of the text around it; always beside a word or with a label on its button. */
export function Icon({ name, size = 18, weight = 1.5 }: { name: IconName; size?: number; weight?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      <path
        d={STROKES[name]}
        fill="none"
        stroke="currentColor"
        strokeWidth={weight}
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  );
}
