import { VERSION } from '@flathead/solver';
import { Button } from '@mantine/core';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { PageLead } from '../app/PageLead.tsx';
import page from '../app/page.module.css';
import { tally, topicsOf } from './check-text.ts';
import styles from './checks.module.css';
import { checkRuns } from './runs-here.ts';
import { TopicChecks } from './TopicChecks.tsx';

/** The verification book, run here and now: every case with its source, its tolerance, and what this machine gives. */
export function ChecksPage() {
  const { cases, rows, running, done, total, trouble } = useStore(checkRuns.store);
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  useEffect(() => checkRuns.open(), []);
  const busy = running !== null;
  const topics = topicsOf(cases ?? []);
  const toggle = (name: string): void => {
    const next = new Set(open);
    if (!next.delete(name)) next.add(name);
    setOpen(next);
  };
  return (
    <div className={page.page}>
      <PageLead
        title="Can these numbers be trusted?"
        about={`Published plates, standards and closed solutions, solved by Flathead ${VERSION} on this machine, each held against the number of its source. Nothing here is stored in advance.`}
      >
        {busy ? (
          <Button size="xs" variant="default" data-testid="checks-stop" onClick={checkRuns.stop}>
            Stop
          </Button>
        ) : (
          <Button size="xs" data-testid="checks-run" disabled={cases === null} onClick={() => checkRuns.run(null)}>
            Run all checks
          </Button>
        )}
      </PageLead>
      <p className={styles.tally} role="status" data-testid="checks-tally">
        {cases === null ? 'Fetching the book.' : `${tally(cases, rows)}.`}
        {busy && ` Running ${running === 'all' ? 'all topics' : running}: ${done} of ${total}.`}
      </p>
      <progress
        className={styles.progress}
        aria-label="Checks run"
        max={Math.max(1, total)}
        value={busy ? done : 0}
        data-idle={!busy || undefined}
      />
      {trouble !== null && (
        <p className={page.trouble} role="alert">
          {trouble}
        </p>
      )}
      <p className={styles.symbols}>
        w: deflection. mxx, myy: bending moments per length. q: pressure. P: point load. D: rigidity of a plate. a, b:
        its sides or radii. t: its thickness. L: span of a beam. kappa: curvature by heat.
      </p>
      {topics.map((topic) => (
        <TopicChecks
          key={topic.name}
          topic={topic}
          rows={rows}
          open={open.has(topic.name)}
          busy={busy}
          onToggle={() => toggle(topic.name)}
          onRun={() => {
            setOpen(new Set([...open, topic.name]));
            checkRuns.run(topic.name);
          }}
        />
      ))}
    </div>
  );
}
