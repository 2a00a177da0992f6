import { materialPresets } from '@flathead/solver';
import { withFastenersLike } from '../state/recipe-edits.ts';
import { useModel, useWorkbench } from '../state/use-workbench.ts';
import { BoardHeightRow } from './BoardHeightRow.tsx';
import { Choice } from './Choice.tsx';
import styles from './field.module.css';
import { NumberField } from './NumberField.tsx';
import { Row } from './Row.tsx';
import { StiffnessRows } from './StiffnessRows.tsx';
import section from './section.module.css';

/** Keys of a fastener whose faults the detail shows beside their fields. */
export const DETAIL_KEYS = [
  ...[
    'bearing',
    'stiffness',
    'acts',
    'preload',
    'torque',
    'torqueFactor',
    'scatter',
    'grade',
    'engagement',
    'into',
    'height',
  ],
];

const ACTS = [
  { value: 'both', label: 'Both ways' },
  { value: 'pull', label: 'Pull: holds back only' },
  { value: 'push', label: 'Push: keeps off only' },
];
const USUAL_GRADE = 'A2-70';
const GRADES = ['8.8', '10.9', '12.9', 'A2-50', 'A2-70', 'A2-80', 'A4-50', 'A4-70', 'A4-80'].map((grade) => ({
  value: grade,
  label: grade === USUAL_GRADE ? `${grade} (usual)` : grade,
}));

/** How stiff a fastener is, and how it is tightened. */
export function FastenerDetail({ index }: { index: number }) {
  const { history } = useWorkbench();
  const fastener = useModel((model) => model.fasteners[index]);
  const own = useModel((model) => model.materials);
  const several = useModel((model) => model.fasteners.length > 1);
  if (fastener === undefined) return null;
  const { name, preload, torque } = fastener;
  const path = `fasteners.${index}`;
  const names = [...new Set([...Object.keys(own ?? {}), ...Object.keys(materialPresets)])];
  const tightened = preload !== undefined || torque !== undefined;
  return (
    <div className={styles.detail} data-testid={`fastener-detail-${index}`}>
      {torque === undefined && (
        <Row label="Preload">
          <NumberField path={`${path}.preload`} name={`Preload of ${name}`} unit="N" step={50} empty="not given" />
        </Row>
      )}
      {preload === undefined && (
        <Row label={torque === undefined ? 'or tightening torque' : 'Tightening torque'}>
          <NumberField path={`${path}.torque`} name={`Torque of ${name}`} unit="N mm" step={10} empty="not given" />
        </Row>
      )}
      {torque !== undefined && (
        <Row label="Torque factor T ÷ (F d)">
          <NumberField path={`${path}.torqueFactor`} name={`Torque factor of ${name}`} step={0.01} empty="0.2" />
        </Row>
      )}
      {tightened && (
        <Row label="Scatter of the preload, ±">
          <NumberField
            path={`${path}.scatter`}
            name={`Scatter of the preload of ${name}`}
            unit="%"
            scale={100}
            step={5}
            empty={torque === undefined ? '0' : '30'}
          />
        </Row>
      )}
      <Row label="Property class">
        <Choice path={`${path}.grade`} name={`Property class of ${name}`} options={GRADES} standard={USUAL_GRADE} />
      </Row>
      <Row label="Tapped into">
        <Choice
          path={`${path}.into`}
          name={`Material that ${name} is tapped into`}
          options={[{ value: '', label: 'not given' }, ...names.map((key) => ({ value: key, label: key }))]}
          standard=""
        />
      </Row>
      <Row label="Engaged thread">
        <NumberField
          path={`${path}.engagement`}
          name={`Engaged thread of ${name}`}
          unit="mm"
          step={0.5}
          empty="usual"
        />
      </Row>
      <Row label="Bearing diameter">
        <NumberField path={`${path}.bearing`} name={`Bearing of ${name}`} unit="mm" step={0.1} empty="screw head" />
      </Row>
      <StiffnessRows path={`${path}.stiffness`} name={name} />
      <Row label="Acts">
        <Choice path={`${path}.acts`} name={`Sense in which ${name} acts`} options={ACTS} standard="both" />
      </Row>
      <BoardHeightRow path={path} name={name} />
      {several && (
        <button
          type="button"
          className={section.add}
          data-testid="fasteners-alike"
          onClick={() => history.edit((model) => withFastenersLike(model, index))}
        >
          Use all of this for every fastener
        </button>
      )}
    </div>
  );
}
