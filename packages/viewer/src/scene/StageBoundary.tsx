import { Component, type ReactNode } from 'react';
import styles from './stage.module.css';

/** Keeps the rest of the page when the picture can't be drawn, as where WebGL is missing. */
export class StageBoundary extends Component<{ readonly children: ReactNode }, { readonly failed: boolean }> {
  override readonly state = { failed: false };

  static getDerivedStateFromError() {
    return { failed: true };
  }

  override render() {
    if (!this.state.failed) return this.props.children;
    return (
      <div className={styles.noPicture} role="status">
        <p>
          <strong>The head can't be drawn here.</strong> The browser offers no WebGL: switch on hardware acceleration in
          its settings, or use another browser. The verdict and the recipe work all the same.
        </p>
      </div>
    );
  }
}
