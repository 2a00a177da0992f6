export { closeTasks, help, join, shareTop, takeTask } from './factor';
export { backward, forward, forwardBelow, forwardPivot, helpSolve } from './solve';
