import type { HeadModel } from '@flathead/solver';

/** What the numbers rest on for this head, one sentence each. */
export function assumptions({ theory, sites, frame, fasteners, seats, limits }: HeadModel): string[] {
  const { relax, holes } = sites.probes;
  const auto = fasteners.filter(({ stiffness = 'auto' }) => stiffness === 'auto').length;
  return [
    'The head is a plate, held and loaded across its plane; deflections are small beside its thickness, materials linear.',
    theory === 'thin'
      ? 'Solved as a thin plate: transverse shear is left out, which states too little bow on a stocky head.'
      : 'Solved with transverse shear.',
    'Bow is the largest deviation of the site area from the plane through the fastener seats as they move, away from the board positive.',
    'The board is flat and does not move.',
    relax
      ? 'Probes give way as the head bows, each by its spring rate.'
      : 'The probe load stays as the head bows, which is on the safe side.',
    ...(holes === undefined
      ? ['Probe fields count as solid; drilled ones are softer.']
      : ['Drilled probe fields count as plates of effective stiffness.']),
    ...(frame?.join === 'sliding' ? ['Frame and body bend side by side without shear between them.'] : []),
    ...(frame?.join === 'bonded' ? ['Frame and body are bonded without slip and bend as one section.'] : []),
    ...(frame?.join === 'bracket' ? ['The joint of frame and body lies between sliding and bonded.'] : []),
    ...(auto > 0
      ? [
          `The stiffness of ${auto === fasteners.length ? 'the fasteners' : `${auto} of ${fasteners.length} fasteners`} is estimated from screw and clamped parts, of joints that stay closed.`,
        ]
      : []),
    ...(seats?.length ? ['Seats push only; the head may lift off them.'] : []),
    limits.margin === undefined
      ? 'A value within its numerical error of the limit counts as marginal.'
      : 'A value within its numerical error of the limit, or within the share kept in hand, counts as marginal.',
  ];
}
