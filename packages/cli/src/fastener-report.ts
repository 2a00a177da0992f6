import type { FastenerResult, SeatResult } from '@flathead/solver';
import { newtons, place, plain, um } from './format.ts';
import { table } from './table.ts';
import type { Paint } from './terminal.ts';

/** Reactions of a case, and beside them what is left of each preload where there are any. */
export function fastenerTable(fasteners: readonly FastenerResult[], paint: Paint): string {
  const preloaded = fasteners.some(({ joint }) => joint !== null);
  const headings = ['fastener', 'x, y, mm', 'reaction, N', 'seat moves, um', 'stiffness, N/mm'];
  return table(
    preloaded
      ? [...headings, 'preload, N', 'screw, N', 'clamp left, N', 'of proof', 'of stripping', 'joint']
      : headings,
    fasteners.map((fastener) => [
      fastener.name,
      place(fastener.at),
      newtons(fastener.reaction),
      um(fastener.w),
      fastener.stiffness === null ? 'rigid' : plain(fastener.stiffness),
      ...(preloaded ? jointCells(fastener, paint) : []),
    ]),
    paint,
  );
}

function jointCells({ joint }: FastenerResult, paint: Paint): string[] {
  if (joint === null) return ['', '', '', '', '', ''];
  const { preload, screwForce, clampLeft, proofRatio, strippingRatio, opens } = joint;
  const share = (value: number | null) => {
    if (value === null) return '?';
    const text = `${(100 * value).toFixed(0)} %`;
    return value > 1 ? paint.red(text) : text;
  };
  return [
    ...[preload, screwForce, clampLeft].map(({ low, high }) =>
      newtons(low) === newtons(high) ? newtons(low) : `${newtons(low)} to ${newtons(high)}`,
    ),
    share(proofRatio),
    share(strippingRatio),
    opens ? paint.red('opens') : 'closed',
  ];
}

/** What each seat carries, and where the head has lifted off it. */
export function seatTable(seats: readonly SeatResult[], paint: Paint): string {
  return table(
    ['seat', 'contact, N', 'pressure up to, MPa', 'lifted off', 'around x, y, mm'],
    seats.map(({ name, force, pressure, lifted, liftedAround }) => [
      name,
      newtons(force),
      plain(pressure),
      `${(100 * lifted).toFixed(0)} %`,
      liftedAround === null ? '' : place(liftedAround),
    ]),
    paint,
  );
}

/** Every compliance of the estimated stiffnesses in nm/N, in the order that the force passes them; null when none is. */
export function complianceTable(fasteners: readonly FastenerResult[], paint: Paint): string | null {
  const rows = fasteners.flatMap(({ name, terms }) => {
    if (terms === null) return [];
    const { head, free, engaged, tapped, clamped, seat } = terms.compliance;
    const parts = [head, free, engaged, tapped, clamped, seat].map((compliance) => plain(compliance * 1e6));
    return [[name, plain(terms.clampedLength), ...parts]];
  });
  if (rows.length === 0) return null;
  return table(
    [
      'compliance, nm/N',
      'grip, mm',
      'screw head',
      'free thread',
      'engaged thread',
      'tapped part',
      'clamped cone',
      'seat',
    ],
    rows,
    paint,
  );
}
