/** Colours of the things on the stage, by colour scheme of the page. */
export interface Palette {
  readonly ceramic: string;
  readonly ceramicSide: string;
  readonly steel: string;
  readonly screw: string;
  readonly socket: string;
  readonly line: string;
  readonly lineOpacity: number;
  readonly hidden: string;
  readonly grid: string;
  readonly shadow: number;
  readonly keepOut: string;
  readonly accent: string;
}

export const PALETTES: Readonly<Record<'light' | 'dark', Palette>> = {
  light: {
    ceramic: '#f4f0e3',
    ceramicSide: '#e3ddca',
    steel: '#aab4b5',
    screw: '#59676b',
    socket: '#2c3639',
    line: '#1c2629',
    lineOpacity: 0.62,
    hidden: '#1c2629',
    grid: '#bdb8a8',
    shadow: 0.26,
    keepOut: '#8a3fa0',
    accent: '#d9541f',
  },
  dark: {
    ceramic: '#e9e5d8',
    ceramicSide: '#b9b5a8',
    steel: '#76848a',
    screw: '#47545a',
    socket: '#1a2124',
    line: '#0e1416',
    lineOpacity: 0.7,
    hidden: '#0e1416',
    grid: '#343e42',
    shadow: 0.55,
    keepOut: '#e2b6f7',
    accent: '#ff8a5c',
  },
};
