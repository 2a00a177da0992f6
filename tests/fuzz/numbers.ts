import fc from 'fast-check';

/** Evenly spread: doubles of the library are spread evenly over their exponents, most of them next to nothing. */
export const unit = fc.integer({ min: 0, max: 1_000_000 }).map((n) => n / 1_000_000);
export const between = (min: number, max: number) => unit.map((share) => min + share * (max - min));
/** Evenly over the powers of ten. */
export const log = (min: number, max: number) => between(Math.log(min), Math.log(max)).map(Math.exp);
export const sometimes = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined, freq: 1 });
