import { BodySection } from './BodySection.tsx';
import { CasesSection } from './CasesSection.tsx';
import { FastenersSection } from './FastenersSection.tsx';
import { FrameSection } from './FrameSection.tsx';
import { LimitsSection } from './LimitsSection.tsx';
import { SeatsSection } from './SeatsSection.tsx';
import { SitesSection } from './SitesSection.tsx';
import styles from './section.module.css';

/** The head as an ordered list to edit. */
export function Recipe() {
  return (
    <aside className={styles.recipe} aria-label="Recipe of the head">
      <BodySection />
      <SitesSection />
      <FrameSection />
      <FastenersSection />
      <SeatsSection />
      <CasesSection />
      <LimitsSection />
    </aside>
  );
}
