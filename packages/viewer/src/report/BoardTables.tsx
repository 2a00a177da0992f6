import type { HeadModel } from '@flathead/solver';
import { ReportTable } from './ReportTable.tsx';
import { pairWords, plain, shapeWords } from './shape-words.ts';

/** Keep-outs and seats of the board, where it has any. */
export function BoardTables({ keepOuts = [], seats = [] }: HeadModel) {
  return (
    <>
      <ReportTable
        title="Keep-outs of the board"
        words
        columns={['Keep-out', 'Area', 'Clearance asked for, mm']}
        rows={keepOuts.map(({ name, shape, clearance = 0 }) => [name, shapeWords(shape), plain(clearance)])}
      />
      <ReportTable
        title="Seats of the board"
        words
        columns={['Seat', 'Area', 'Stiffness']}
        rows={seats.map((seat) => [
          seat.name,
          'shape' in seat ? shapeWords(seat.shape) : `Ø ${plain(seat.diameter)} mm at ${pairWords(seat.at)}`,
          seat.modulus === undefined ? `${plain(seat.stiffness ?? 0)} N/mm` : `${plain(seat.modulus)} N/mm³`,
        ])}
      />
    </>
  );
}
