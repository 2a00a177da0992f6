export { closeTasks, help, join, shareTop, takeTask } from './factor';
export { backwardFronts, forwardBelow, forwardFronts, forwardPivot } from './solve';
