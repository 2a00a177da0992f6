export { closeTasks, help, join, shareTop, takeTask } from './factor';
export { backward, forwardBelow, forwardFronts, forwardPivot, helpBackward } from './solve';
