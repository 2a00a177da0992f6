import { ActionIcon, Tooltip, useComputedColorScheme, useMantineColorScheme } from '@mantine/core';
import { Icon } from './icons.tsx';
import styles from './top-bar.module.css';

export function ThemeSwitch() {
  const { setColorScheme } = useMantineColorScheme();
  const other = useComputedColorScheme('light') === 'light' ? 'dark' : 'light';
  return (
    <Tooltip label={`To ${other}`} openDelay={400}>
      <ActionIcon
        variant="subtle"
        color="gray"
        className={styles.button}
        aria-label={`Show the page in ${other}`}
        data-testid="theme"
        onClick={() => setColorScheme(other)}
      >
        <Icon name={other === 'dark' ? 'moon' : 'sun'} />
      </ActionIcon>
    </Tooltip>
  );
}
