import { twiceArea } from './plate-kinematics.ts';

/**
 * Bending stiffness between the side bulges, `H_kl = integral of b_k' D b_l` with b_k the curvature of a unit bulge of
 * side k less its mean.
 *
 * With `v_kn = sym(grad L_n (x) e_k)` that curvature is `4 (L_i - 1/3) v_kj + 4 (L_j - 1/3) v_ki`, and
 * `integral of (L_m - 1/3)(L_n - 1/3) = A/36 (3 delta_mn - 1)`; gradients add up to zero, `v_kk = -(v_ki + v_kj)`. Hence
 *
 *     H_kk = 8 A/9 (v_ki D v_ki + v_kj D v_kj - v_ki D v_kj)
 *     H_kl = 4 A/9 (3 v_kl D v_lk - v_kk D v_ll)
 *
 * @param bending `[D11, D12, D13, D22, D23, D33]`
 * @param H `[3 * 3]` out, symmetric
 */
export function bulgeStiffness(x: Float64Array, y: Float64Array, bending: Float64Array, H: Float64Array): void {
  const e0x = x[2] - x[1];
  const e0y = y[2] - y[1];
  const e1x = x[0] - x[2];
  const e1y = y[0] - y[2];
  const e2x = x[1] - x[0];
  const e2y = y[1] - y[0];
  // 4 A/9, with v times twice the area instead of v.
  const scale = 2 / (9 * twiceArea(x, y));
  const D11 = scale * bending[0];
  const D12 = scale * bending[1];
  const D13 = scale * bending[2];
  const D22 = scale * bending[3];
  const D23 = scale * bending[4];
  const D33 = scale * bending[5];
  // v_kn as x, y and twice xy parts, and its moments D v_kn.
  const x01 = -e1y * e0x;
  const y01 = e1x * e0y;
  const t01 = e1x * e0x - e1y * e0y;
  const x02 = -e2y * e0x;
  const y02 = e2x * e0y;
  const t02 = e2x * e0x - e2y * e0y;
  const x10 = -e0y * e1x;
  const y10 = e0x * e1y;
  const t10 = e0x * e1x - e0y * e1y;
  const x12 = -e2y * e1x;
  const y12 = e2x * e1y;
  const t12 = e2x * e1x - e2y * e1y;
  const x20 = -e0y * e2x;
  const y20 = e0x * e2y;
  const t20 = e0x * e2x - e0y * e2y;
  const x21 = -e1y * e2x;
  const y21 = e1x * e2y;
  const t21 = e1x * e2x - e1y * e2y;
  const mx01 = D11 * x01 + D12 * y01 + D13 * t01;
  const my01 = D12 * x01 + D22 * y01 + D23 * t01;
  const mt01 = D13 * x01 + D23 * y01 + D33 * t01;
  const mx02 = D11 * x02 + D12 * y02 + D13 * t02;
  const my02 = D12 * x02 + D22 * y02 + D23 * t02;
  const mt02 = D13 * x02 + D23 * y02 + D33 * t02;
  const mx10 = D11 * x10 + D12 * y10 + D13 * t10;
  const my10 = D12 * x10 + D22 * y10 + D23 * t10;
  const mt10 = D13 * x10 + D23 * y10 + D33 * t10;
  const mx12 = D11 * x12 + D12 * y12 + D13 * t12;
  const my12 = D12 * x12 + D22 * y12 + D23 * t12;
  const mt12 = D13 * x12 + D23 * y12 + D33 * t12;
  const mx20 = D11 * x20 + D12 * y20 + D13 * t20;
  const my20 = D12 * x20 + D22 * y20 + D23 * t20;
  const mt20 = D13 * x20 + D23 * y20 + D33 * t20;
  const mx21 = D11 * x21 + D12 * y21 + D13 * t21;
  const my21 = D12 * x21 + D22 * y21 + D23 * t21;
  const mt21 = D13 * x21 + D23 * y21 + D33 * t21;
  H[0] = 2 * (x01 * mx01 + y01 * my01 + t01 * mt01 + x02 * (mx02 - mx01) + y02 * (my02 - my01) + t02 * (mt02 - mt01));
  H[4] = 2 * (x12 * mx12 + y12 * my12 + t12 * mt12 + x10 * (mx10 - mx12) + y10 * (my10 - my12) + t10 * (mt10 - mt12));
  H[8] = 2 * (x20 * mx20 + y20 * my20 + t20 * mt20 + x21 * (mx21 - mx20) + y21 * (my21 - my20) + t21 * (mt21 - mt20));
  H[1] = H[3] =
    3 * (x01 * mx10 + y01 * my10 + t01 * mt10) -
    (x01 + x02) * (mx12 + mx10) -
    (y01 + y02) * (my12 + my10) -
    (t01 + t02) * (mt12 + mt10);
  H[2] = H[6] =
    3 * (x02 * mx20 + y02 * my20 + t02 * mt20) -
    (x01 + x02) * (mx20 + mx21) -
    (y01 + y02) * (my20 + my21) -
    (t01 + t02) * (mt20 + mt21);
  H[5] = H[7] =
    3 * (x12 * mx21 + y12 * my21 + t12 * mt21) -
    (x12 + x10) * (mx20 + mx21) -
    (y12 + y10) * (my20 + my21) -
    (t12 + t10) * (mt20 + mt21);
}
