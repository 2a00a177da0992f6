import type { NumberRows } from '../format/number-rows.ts';

/** Head and rows of a table of numbers: the first cell of a row names it. */
export function TableBody({ columns, rows }: NumberRows) {
  return (
    <>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column} scope="col">
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, ...cells], r) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
          <tr key={r}>
            <th scope="row">{name}</th>
            {cells.map((cell, i) => (
              <td key={columns[i + 1]}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </>
  );
}
