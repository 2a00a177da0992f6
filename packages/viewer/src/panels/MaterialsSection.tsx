import { usersOf, withOwnMaterial, withoutMaterial } from '../state/list-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { AddButton, RemoveButton } from './ListButtons.tsx';
import { MaterialName } from './MaterialName.tsx';
import { MaterialValues } from './MaterialValues.tsx';
import { Section } from './Section.tsx';
import styles from './section.module.css';

/** Materials of the engineer's own, which win over those that ship. */
export function MaterialsSection() {
  const { history } = useWorkbench();
  const model = useModel((model) => model);
  const names = Object.keys(model.materials ?? {});
  return (
    <Section
      title="Own materials"
      aside={names.length === 0 ? 'none: the lists have presets' : 'offered with the presets'}
      of="materials"
      claimed={[]}
      rare
    >
      {names.map((name, i) => {
        const users = usersOf(model, name);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a material keeps its place while its name is typed
          <div key={i} className={styles.item} data-testid={`material-${i}`}>
            <div className={styles.itemHead}>
              <MaterialName name={name} index={i} />
              {users.length === 0 ? (
                <RemoveButton
                  name={`Remove material ${name}`}
                  onClick={() => history.edit((now) => withoutMaterial(now, name))}
                />
              ) : (
                <span className={styles.aside}>of the {users.join(' and ')}</span>
              )}
            </div>
            <MaterialValues name={name} />
          </div>
        );
      })}
      <div className={styles.foot}>
        <AddButton
          label="Add a material like that of the body"
          testId="add-material"
          onClick={() => history.edit(withOwnMaterial)}
        />
      </div>
    </Section>
  );
}
