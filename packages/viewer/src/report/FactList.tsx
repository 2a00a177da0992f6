import type { FactGroup } from './facts.ts';

/** Inputs in groups, two columns of them on a page. */
export function FactList({ groups }: { groups: readonly FactGroup[] }) {
  return (
    <div className="report-facts">
      {groups.map(({ title, facts }) => (
        <section key={title}>
          <h3>{title}</h3>
          <dl>
            {facts.map(([what, value]) => (
              <div key={what}>
                <dt>{what}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </div>
  );
}
