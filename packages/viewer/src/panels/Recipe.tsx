import { BodySection } from './BodySection.tsx';
import { CasesSection } from './CasesSection.tsx';
import { FastenersSection } from './FastenersSection.tsx';
import { FrameSection } from './FrameSection.tsx';
import { HelpLine } from './HelpLine.tsx';
import { KeepOutsSection } from './KeepOutsSection.tsx';
import { LimitsSection } from './LimitsSection.tsx';
import { MaterialsSection } from './MaterialsSection.tsx';
import { MethodSection } from './MethodSection.tsx';
import { SeatsSection } from './SeatsSection.tsx';
import { SitesSection } from './SitesSection.tsx';
import styles from './section.module.css';

/** The head as an ordered list to edit, and a line that says what the field in hand means. */
export function Recipe() {
  return (
    <HelpLine className={styles.recipe} label="Recipe of the head">
      <BodySection />
      <SitesSection />
      <FrameSection />
      <FastenersSection />
      <KeepOutsSection />
      <SeatsSection />
      <CasesSection />
      <LimitsSection />
      <MaterialsSection />
      <MethodSection />
    </HelpLine>
  );
}
