/** The part of papaparse that is used: rows of a text one by one. */
declare module 'papaparse' {
  interface Row {
    readonly data: string[];
    readonly errors: readonly { readonly type: string; readonly code: string; readonly message: string }[];
    /** Offset behind the row. */
    readonly meta: { readonly cursor: number };
  }
  const papa: {
    parse(
      text: string,
      options: { readonly delimiter: string; readonly newline: string; readonly step: (row: Row) => void },
    ): void;
  };
  export default papa;
}
