import type { Material } from '@flathead/solver';
import { materialPresets } from '@flathead/solver';
import { useMemo } from 'react';
import { valueAt } from '../state/set-value.ts';
import { useModel } from '../state/use-workbench.ts';
import { Choice } from './Choice.tsx';
import styles from './field.module.css';
import { Row } from './Row.tsx';

/** Material of a part with the values used and where they come from. */
export function MaterialRow({ path, name }: { path: string; name: string }) {
  const own = useModel((model) => model.materials);
  const value = useModel((model) => valueAt(model, path));
  const options = useMemo(() => {
    const mine = Object.keys(own ?? {}).map((key) => ({ value: key, label: `${key} (own)` }));
    const presets = Object.entries(materialPresets).map(([key, { title }]) => ({ value: key, label: capital(title) }));
    return [...mine, ...presets.filter((preset) => !mine.some((other) => other.value === preset.value))];
  }, [own]);
  const material = typeof value === 'string' ? (own?.[value] ?? presetOf(value)) : undefined;
  return (
    <>
      <Row label="Material">
        <Choice path={path} name={name} options={options} />
      </Row>
      {material && (
        <p className={styles.note}>
          {properties(material)}
          {material.source ? `; ${material.source}` : ''}
        </p>
      )}
    </>
  );
}

function properties({ E, nu, expansion, strength, kind, weibull }: Material): string {
  return [
    `E ${Math.round(E / 100) / 10} GPa`,
    `Poisson ${nu}`,
    ...(expansion === undefined ? [] : [`expansion ${Number((expansion * 1e6).toPrecision(3))} \u00b5m/(m K)`]),
    strength === undefined
      ? 'strength not known'
      : `${kind === 'ceramic' ? 'flexural strength' : 'strength'} ${strength} MPa`,
    ...(weibull === undefined ? [] : [`Weibull modulus ${weibull}`]),
  ].join(', ');
}

function presetOf(name: string): Material | undefined {
  return Object.hasOwn(materialPresets, name) ? materialPresets[name] : undefined;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
