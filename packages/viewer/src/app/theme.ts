import { Button, createTheme, type MantineColorsTuple } from '@mantine/core';

/** Green-blue of the ramp, from paper to ink. */
const tide: MantineColorsTuple = [
  '#eef5f5',
  '#dcebec',
  '#b6d6da',
  '#8dc0c7',
  '#66a9b4',
  '#44909f',
  '#2c7787',
  '#1d6071',
  '#154b59',
  '#0d3641',
];

/** Components of the library in our type and colours; what they look like is in theme.css. */
export const theme = createTheme({
  fontFamily: 'var(--face)',
  headings: { fontFamily: 'var(--face)', fontWeight: '600' },
  primaryColor: 'tide',
  primaryShade: { light: 7, dark: 3 },
  autoContrast: true,
  colors: { tide },
  defaultRadius: 6,
  cursorType: 'pointer',
  components: {
    // A menu holds its items alone, and begins at the first.
    Menu: { defaultProps: { withInitialFocusPlaceholder: false } },
    // The library reckons the contrast of a filled button once, for the light theme.
    Button: Button.extend({
      vars: (_, { variant = 'filled' }) => ({
        root: variant === 'filled' ? { '--button-bg': 'var(--accent)', '--button-color': 'var(--on-accent)' } : {},
      }),
    }),
  },
});
