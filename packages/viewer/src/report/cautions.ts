/** What a reader of the numbers must know; it goes with every report. */
export const CAUTIONS: readonly (readonly [lead: string, text: string])[] = [
  [
    'Judgement and test.',
    "These results support a qualified engineer's judgement and a physical test; they replace neither. Local codes, regulations and licensed practice apply where the head is built and used, and take precedence over this report.",
  ],
  [
    'Ceramics are brittle.',
    'Strength scatters from part to part and falls with flaws and time under load: a head that bows little can still crack at a hole or an edge. Strength factor and failure probability are computed from plate stress on smooth faces, edges and hole rims; screw holes, chips, machining flaws beyond the test bars\u2019 and slow crack growth are not in them. Keep a factor in hand, proof-test parts, and shield people from fragments.',
  ],
  [
    'Screw joints are softer and less certain than their drawings.',
    'The stiffness of a fastener is an estimate from its dimensions unless it was entered, and it often matters more than anything else: measure one, and enter the value. Preload from a torque scatters by a third; over-tightened screws strip threads and crack ceramics.',
  ],
  [
    'Bonded frames.',
    'A frame bonded to a ceramic of another expansion bends and stresses it when heated; a screwed one lies between bonded and sliding.',
  ],
  [
    'Values of materials and screws',
    'that are marked \u201cto be confirmed\u201d were not read from a source: confirm them against the supplier\u2019s data before anyone relies on them.',
  ],
  [
    'Probe forces',
    'are as entered. Typical values are common practice, not data for a certain probe. Friction in the guide holes and scatter from probe to probe are not in the contact force.',
  ],
  [
    'Numerical errors',
    'are estimates from a second mesh, not bounds. They say nothing of errors in the inputs or of what the model leaves out.',
  ],
];
