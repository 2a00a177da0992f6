import type { LoadCase } from '@flathead/solver';
import { plain } from './shape-words.ts';

/** What is done to the head in a case of the model: `A1, A2 touched; 85 °C`. */
export function caseWords({ touched, temperature, gradient }: LoadCase): string {
  const parts = [
    touched === undefined || (Array.isArray(touched) && touched.length === 0)
      ? 'no site touched'
      : touchedWords(touched),
    ...(temperature === undefined ? [] : [`${plain(temperature)} °C throughout`]),
    ...(gradient === undefined ? [] : [`${plain(gradient)} K through the thickness`]),
  ];
  return parts.join('; ');
}

function touchedWords(touched: NonNullable<LoadCase['touched']>): string {
  if (touched === 'all') return 'all sites touched';
  if (!('wafer' in touched)) return `${touched.join(', ')} touched`;
  const { diameter, edge, centre = 'die' } = touched.wafer;
  return `every touchdown over a wafer of Ø ${plain(diameter)} mm, ${plain(edge)} mm edge, ${centre} at its centre`;
}
