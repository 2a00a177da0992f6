import type { NumberRows } from '../format/number-rows.ts';

/** A word longer than this may be broken anywhere where long words are marked. */
const LONG_WORD = /\S{25}/;

interface TableBodyProps extends NumberRows {
  /** Marks cells with long words, for a page that they would push the table off. */
  readonly marksLong?: boolean;
}

/** Head and rows of a table of numbers: the first cell of a row names it. Rows and columns are told apart by their places. */
export function TableBody({ columns, rows, marksLong = false }: TableBodyProps) {
  const long = (text: string): true | undefined => (marksLong && LONG_WORD.test(text)) || undefined;
  return (
    <>
      <thead>
        <tr>
          {columns.map((column, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place; cases may share a name
            <th key={i} scope="col" data-long={long(column)}>
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, ...cells], r) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
          <tr key={r}>
            <th scope="row" data-long={long(name)}>
              {name}
            </th>
            {cells.map((cell, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: as the columns
              <td key={i} data-long={long(cell)}>
                {cell}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </>
  );
}
