import { Legend } from '../charts/Legend.tsx';
import { useQuantity } from '../state/use-quantity.ts';
import { useModel } from '../state/use-workbench.ts';

/** What the colours of the stage mean. */
export function StageLegend() {
  const bow = useModel((model) => model.limits.bow);
  const { quantity, tension, scale } = useQuantity();
  if (quantity === 'deviation')
    return <Legend top={bow} limited caption="Bow against the limit, µm" unit="µm" scale={1000} />;
  const { top, limited } = scale;
  const what = tension?.stale ? 'Tension before the edit, MPa' : 'Tension on the body, MPa';
  const caption = tension === null ? 'Tension follows shortly' : what;
  return <Legend top={top} limited={limited} caption={caption} unit="MPa" scale={1} />;
}
