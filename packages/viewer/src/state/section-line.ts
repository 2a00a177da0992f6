import type { HeadResult, Point } from '@flathead/solver';
import { onRowsAndColumns, rowSection, type SectionLine } from '../buffers/section-profile.ts';
import type { SectionAxis } from '../charts/section-scales.ts';
import { pointOnGrid } from './grid.ts';
import { shownCase } from './shown-case.ts';
import type { StageMove } from './stage-move.ts';
import type { Workbench } from './workbench.ts';

/** An end nearer than this to the middle of a row or column of sites goes onto it, mm. */
const REACH = 0.8;

/** Share of the line at which it is held as a whole: beside the sites, whose numbers stay in sight. */
const HOLD = 0.12;

/** Where the line is held to be moved as a whole. */
export function holdOf({ from, to }: SectionLine): Point {
  return [from[0] + HOLD * (to[0] - from[0]), from[1] + HOLD * (to[1] - from[1])];
}

/** The line that is cut along: the chosen one, or the row of the worst site of the case shown. */
export function sectionLine(result: HeadResult, caseName: string | null, chosen: SectionLine | null): SectionLine {
  return chosen ?? rowSection(result.mesh, result.sites, shownCase(result, caseName).bow.site);
}

/** A line that runs along x or y of the head is told by that coordinate; `null` where it runs across. */
export function axisOf({ from, to }: SectionLine): SectionAxis | null {
  const along = [0, 1].filter((axis) => Math.abs(to[axis] - from[axis]) > 1e-6);
  if (along.length !== 1) return null;
  const [axis] = along;
  return { name: axis === 0 ? 'x' : 'y', from: from[axis], to: to[axis] };
}

/** Begins to move an end of the line, or the line as a whole. The head stays as it is: there is nothing to undo. */
export function beginSectionMove(
  { view, run }: Pick<Workbench, 'view' | 'run'>,
  part: 'from' | 'to' | 'whole',
): StageMove {
  const before = view.getState().section;
  const { solved } = run.getState();
  const sites = solved?.result.sites ?? [];
  const start = solved && sectionLine(solved.result, view.getState().caseName, before);
  const settled = (point: Point, grid: number): Point => {
    // Typed places stay as they are.
    const [x, y] = pointOnGrid(point, grid);
    return grid === 0 ? [x, y] : onRowsAndColumns(sites, [x, y], REACH);
  };
  return {
    to(point, grid) {
      if (!start) return;
      if (part !== 'whole') {
        view.setState({ section: { ...start, [part]: settled(point, grid) } });
        return;
      }
      const hold = holdOf(start);
      const [x, y] = settled(point, grid);
      const moved = (end: Point): Point => pointOnGrid([end[0] + x - hold[0], end[1] + y - hold[1]], 0);
      view.setState({ section: { from: moved(start.from), to: moved(start.to) } });
    },
    end() {},
    cancel: () => view.setState({ section: before }),
  };
}
