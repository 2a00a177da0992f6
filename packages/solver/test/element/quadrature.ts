/** Radon (1948): seven points over a triangle of unit area, exact to degree 5. The elements don't use it. */
export const radon7: readonly { readonly l: readonly number[]; readonly weight: number }[] = (() => {
  const r = Math.sqrt(15);
  const orbit = (p: number, weight: number) => [
    { l: [1 - 2 * p, p, p], weight },
    { l: [p, 1 - 2 * p, p], weight },
    { l: [p, p, 1 - 2 * p], weight },
  ];
  return [
    { l: [1 / 3, 1 / 3, 1 / 3], weight: 9 / 40 },
    ...orbit((6 - r) / 21, (155 - r) / 1200),
    ...orbit((6 + r) / 21, (155 + r) / 1200),
  ];
})();
