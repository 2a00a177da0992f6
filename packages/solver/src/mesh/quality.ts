/** Smallest angle of any triangle, degrees: the least arc sine of shortest edge over circumdiameter. */
export function smallestAngle(x: Float64Array, y: Float64Array, triangles: ArrayLike<number>, count: number): number {
  let least = Infinity;
  for (let i = 0; i < 3 * count; i += 3) {
    const [a, b, c] = [triangles[i], triangles[i + 1], triangles[i + 2]];
    const ab = Math.hypot(x[b] - x[a], y[b] - y[a]);
    const bc = Math.hypot(x[c] - x[b], y[c] - y[b]);
    const ca = Math.hypot(x[a] - x[c], y[a] - y[c]);
    const twice = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
    // The smallest angle faces the shortest edge: sin = 2 A / (product of the two longer ones).
    least = Math.min(least, (twice * Math.min(ab, bc, ca)) / (ab * bc * ca));
  }
  return (Math.asin(Math.min(1, least)) * 180) / Math.PI;
}
