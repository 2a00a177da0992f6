import type { HeadResult, Point } from '@flathead/solver';
import { onRowsAndColumns, rowSection, type SectionLine } from '../buffers/section-profile.ts';
import { pointOnGrid } from './grid.ts';
import { shownCase } from './shown-case.ts';
import type { StageMove } from './stage-move.ts';
import type { Workbench } from './workbench.ts';

/** An end nearer than this to the middle of a row or column of sites goes onto it, mm. */
const REACH = 0.8;

/** The line that is cut along: the chosen one, or the row of the worst site of the case shown. */
export function sectionLine(result: HeadResult, caseName: string | null, chosen: SectionLine | null): SectionLine {
  return chosen ?? rowSection(result.mesh, result.sites, shownCase(result, caseName).bow.site);
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
      const middle: Point = [(start.from[0] + start.to[0]) / 2, (start.from[1] + start.to[1]) / 2];
      const [x, y] = settled(point, grid);
      const moved = (end: Point): Point => pointOnGrid([end[0] + x - middle[0], end[1] + y - middle[1]], 0);
      view.setState({ section: { from: moved(start.from), to: moved(start.to) } });
    },
    end() {},
    cancel: () => view.setState({ section: before }),
  };
}
