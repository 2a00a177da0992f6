import { Button } from '@mantine/core';
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
  return (
    <div className={styles.show}>
      <ExaggerationControl />
      <div className={styles.buttons}>
        <Button
          variant={playing ? 'light' : 'default'}
          size="compact-xs"
          aria-pressed={playing}
          data-testid="play"
          leftSection={<Icon name={playing ? 'stop' : 'play'} size={12} />}
          onClick={() => view.setState({ playing: !playing })}
        >
          Bend
        </Button>
        <Button
          variant={arrows ? 'light' : 'default'}
          size="compact-xs"
          aria-pressed={arrows}
          data-testid="arrows"
          onClick={() => view.setState({ arrows: !arrows })}
        >
          Forces
        </Button>
        <Button
          variant={section ? 'light' : 'default'}
          size="compact-xs"
          aria-pressed={section}
          data-testid="section"
          onClick={() => view.setState({ sectionOpen: !section })}
        >
          Section
        </Button>
      </div>
    </div>
  );
}
