import { Button } from '@mantine/core';
import type { ReactNode } from 'react';
import { Icon } from '../app/icons.tsx';
import { useView, useWorkbench } from '../state/use-workbench.ts';
import { ExaggerationControl } from './ExaggerationControl.tsx';
import styles from './stage.module.css';

/** What else is shown: the deflection in motion, forces, the section. */
export function ShowTools() {
  const { view } = useWorkbench();
  const playing = useView((state) => state.playing);
  const arrows = useView((state) => state.arrows);
  const section = useView((state) => state.sectionOpen);
  const flat = useView((state) => state.view === 'above');
  return (
    <div className={styles.show}>
      <ExaggerationControl />
      <div className={styles.buttons}>
        <ShowButton
          name="play"
          pressed={playing}
          disabled={flat}
          icon={<Icon name={playing ? 'stop' : 'play'} size={12} />}
          press={() => view.setState({ playing: !playing })}
        >
          Bend
        </ShowButton>
        <ShowButton name="arrows" pressed={arrows} press={() => view.setState({ arrows: !arrows })}>
          Forces
        </ShowButton>
        <ShowButton name="section" pressed={section} press={() => view.setState({ sectionOpen: !section })}>
          Section
        </ShowButton>
      </div>
    </div>
  );
}

interface ShowButtonProps {
  readonly name: string;
  readonly pressed: boolean;
  readonly disabled?: boolean;
  readonly icon?: ReactNode;
  readonly press: () => void;
  readonly children: string;
}

function ShowButton({ name, pressed, disabled = false, icon, press, children }: ShowButtonProps) {
  return (
    <Button
      variant={pressed ? 'light' : 'default'}
      size="compact-xs"
      aria-pressed={pressed}
      disabled={disabled}
      data-testid={name}
      leftSection={icon}
      onClick={press}
    >
      {children}
    </Button>
  );
}
