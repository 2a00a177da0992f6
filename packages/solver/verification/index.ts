/* The verification book: published cases as data, and a runner. An entry of its own, so that it loads when asked for. */
export { verificationBook } from './book.ts';
export type * from './check.ts';
export { problemOf } from './measured.ts';
export * from './steps.ts';
