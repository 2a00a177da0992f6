import { HATCH } from '../buffers/ramp.ts';

/** Stops of a ramp at equal steps, as a gradient. */
export function RampGradient({ id, colours }: { id: string; colours: readonly string[] }) {
  return (
    <linearGradient id={id}>
      {colours.map((colour, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a stop is its place; a ramp of two senses may repeat a colour
        <stop key={i} offset={i / (colours.length - 1)} stopColor={colour} />
      ))}
    </linearGradient>
  );
}

/** Strokes of what is beyond the limit, to be laid over its colours. @param back they lean the other way */
export function HatchPattern({ id, back = false }: { id: string; back?: boolean }) {
  return (
    <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform={`rotate(${back ? -45 : 45})`}>
      <rect width="1.7" height="6" fill={HATCH} />
    </pattern>
  );
}
